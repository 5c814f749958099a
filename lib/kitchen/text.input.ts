import { z } from 'zod'

/** Text that PostgreSQL and JSON can both hold: no NUL, no half of a surrogate pair. */
const isKeepable = (text: string) => !text.includes('\u0000') && text.isWellFormed()
const unreadable = { params: { code: 'unreadable' } }

/** One line of text of 1 to `max` characters, ends trimmed, in Unicode's composed form. */
export function line(max: number) {
  return z.string().refine(isKeepable, unreadable).trim().normalize('NFC').min(1).max(max).refine((text) => !/[\r\n]/.test(text), unreadable)
}

/** Text of up to `max` characters on one or more lines, which may be left empty. */
export function note(max: number) {
  return z.string().refine(isKeepable, unreadable).trim().normalize('NFC').max(max)
}

/** An e-mail address, in lower case: the name a person signs in with. */
export const emailAddress = z.string().refine(isKeepable, unreadable).trim().toLowerCase().max(254).pipe(z.email())

/** A password as it was typed: nothing is trimmed, cut or changed. */
export const typedPassword = z.string().min(1).max(256)

/** A single-use secret out of a link. */
export const linkSecret = z.string().min(1).max(64)

/** The revision of a record that the person had before their eyes. */
export const seenRevision = z.int().min(1)

/** A calendar day as YYYY-MM-DD, within what a bakery plans and remembers. */
export const calendarDay = z.iso.date().refine((day) => day >= '2000-01-01' && day <= '2100-12-31', { params: { code: 'day-far-away' } })
