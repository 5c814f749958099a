import 'server-only'
import { randomInt } from 'node:crypto'

/** Digits and capitals that nobody takes for each other on a bench. */
const letters = '23456789ABCDEFGHJKMNPQRSTVWXYZ'
const length = 8
const isCode = new RegExp(`^[${letters}]{${length}}$`)

/** A random code that a tablet is enrolled with, of 39 bits, for as long as it lives. */
export function makeStationCode(): string {
  return Array.from({ length }, () => letters[randomInt(letters.length)]).join('')
}

/** As it is read aloud and typed: `ABCD-EFGH`. */
export function shownStationCode(code: string): string {
  return `${code.slice(0, 4)}-${code.slice(4)}`
}

/** What was typed, without blanks and dashes, in capitals; null where it is no code. */
export function readStationCode(typed: string): string | null {
  const code = typed.replace(/[\s-]/g, '').toUpperCase()
  return isCode.test(code) ? code : null
}
