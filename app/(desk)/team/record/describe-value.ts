import type { z } from 'zod'

type Json = z.core.util.JSONType

/** A value of the record as one line: `name Ayo, role shift_baker`. The names are the record's own, and a hash is cut. */
export function describeValue(value: Json): string {
  if (value === null) return '–'
  if (Array.isArray(value)) return value.map(describeValue).join('; ')
  if (typeof value === 'object')
    return Object.entries(value)
      .map(([name, part]) => `${name} ${describeValue(part)}`)
      .join(', ')
  return typeof value === 'string' && wholeHash.test(value) ? `${value.slice(0, hashLetters)}…` : String(value)
}

const wholeHash = /^[0-9a-f]{64}$/
/** As much of a hash as people compare by eye; the whole of it is in the entry's own text. */
const hashLetters = 12
