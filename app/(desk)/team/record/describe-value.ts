import type { z } from 'zod'

type Json = z.core.util.JSONType

/** A value of the record as one line: `name Ayo, role shift_baker`. The names are the record's own. */
export function describeValue(value: Json): string {
  if (value === null) return '–'
  if (Array.isArray(value)) return value.map(describeValue).join('; ')
  if (typeof value === 'object')
    return Object.entries(value)
      .map(([name, part]) => `${name} ${describeValue(part)}`)
      .join(', ')
  return String(value)
}
