import { z } from 'zod'
import { hasVisible, isKeepable, isSeenLine } from './seen-text.input'

/** In longer text tabs and new lines are fine, other control characters and forced directions are not. */
const isUnseenInNote = /[^\P{Cc}\t\n\r]|[\u202a-\u202e\u2066-\u2069]/u
const unreadable = { params: { code: 'unreadable' } }

/** One line of text of 1 to `max` characters that can all be seen, ends trimmed, in Unicode's composed form. */
export function line(max: number) {
  return z
    .string()
    .refine(isKeepable, unreadable)
    .trim()
    .normalize('NFC')
    .min(1)
    .max(max)
    .refine((text) => text === '' || isSeenLine(text), unreadable)
}

/** Text of up to `max` characters on one or more lines, which may be left empty. */
export function note(max: number) {
  return z
    .string()
    .refine(isKeepable, unreadable)
    .trim()
    .normalize('NFC')
    .max(max)
    .refine((text) => !isUnseenInNote.test(text), unreadable)
}

/** As `note`, with something in it that can be seen. */
export function visibleNote(max: number) {
  return note(max)
    .min(1)
    .refine((text) => text === '' || hasVisible(text), unreadable)
}

/** An e-mail address, in lower case: the name a person signs in with. */
export const emailAddress = z
  .string()
  .refine(isKeepable, unreadable)
  .trim()
  .toLowerCase()
  .min(1)
  .max(254)
  .pipe(z.email())

/** A password as it was typed: nothing is trimmed, cut or changed. */
export const typedPassword = z.string().min(1).max(256)

/** A password that somebody chooses. The least length is that of one that stands alone (NIST SP 800-63B-4 §3.1.1.2). */
export const chosenPassword = typedPassword.min(15)

/** A single-use secret out of a link. */
export const linkSecret = z.string().min(1).max(64)

/** The revision of a record that the person had before their eyes. */
export const seenRevision = z.int().min(1)

/** Days within what a bakery plans and remembers; beyond them clocks, calendars and the database part ways. */
const isNear = (day: string) => day >= '2000-01-01' && day <= '2100-12-31'
const farAway = { params: { code: 'day-far-away' } }

/** A calendar day as YYYY-MM-DD, within what a bakery plans and remembers. */
export const calendarDay = z.iso.date().refine(isNear, farAway)

/** A moment with its zone as ISO 8601, within the same days. */
export const instant = z.iso.datetime({ offset: true }).refine((text) => isNear(text.slice(0, 10)), farAway)

/** A moment as `momentOf` makes it of a day and a time that were typed; what is none comes as it was typed, and is said so. */
export const typedMoment = z
  .string()
  .refine((text) => z.iso.datetime().safeParse(text).success, { params: { code: 'not-a-moment' }, abort: true })
  .refine((text) => isNear(text.slice(0, 10)), { ...farAway, abort: true })
  .transform((text) => new Date(text))
