import { z } from 'zod'
import { calendarDay, line } from '../../text.input'

/** Most that one file may bring. */
export const mostImported = { bytes: 1_048_576, rows: 5000, columns: 60, readings: 20_000 } as const

export const separator = z.enum([',', ';', '\t', '|'])
export const decimalMark = z.enum(['.', ','])

/** What a column of the file says: which dough, which of its pieces, when, or a reading; or nothing that is wanted. */
export const columnUse = z.discriminatedUnion('as', [
  z.strictObject({
    /** `dough`: which of several doughs of one arm on one day, from 1. `good`: how many pieces of the dough were good. */
    as: z.enum(['nothing', 'code', 'day', 'arm', 'dough', 'piece', 'level', 'time', 'good']),
  }),
  z.strictObject({ as: z.literal('measure'), measureId: z.uuid(), unit: line(20) }),
])
export type ColumnUse = z.output<typeof columnUse>

/** How a file is to be read. */
export const importMatch = z.strictObject({
  separator,
  decimal: decimalMark,
  /** In the order of the file's columns. */
  columns: z.array(columnUse).min(1).max(mostImported.columns),
  /** Which arm, by position, a text of the arm column stands for. */
  arms: z.array(z.strictObject({ text: z.string().max(200), arm: z.int().min(0).max(6) })).max(50),
})
export type ImportMatch = z.output<typeof importMatch>

const looked = {
  file: z.strictObject({
    name: line(200),
    /** The file as it is; it is read anew each time. */
    bytes: z.instanceof(Uint8Array),
  }),
  /** On which day the readings were taken, where no column says when. */
  day: calendarDay.nullable(),
  /** Values outside the plausible range were looked at and are right. */
  keepOdd: z.boolean(),
  /** These doughs were baked and measured outside the shift; null when they were begun there. */
  outside: z.strictObject({ cleanDownDone: z.boolean(), orderWhy: line(300).optional() }).nullable(),
}

export const importReadingsInput = z.strictObject({ trialId: z.uuid(), ...looked, match: importMatch })

/**
 * Without a match, or with one of another table (`matched` says of which), the columns are guessed; so are arms that a
 * match leaves open. Without a file only the trial is told.
 */
export const previewImportInput = z.strictObject({
  trialId: z.uuid(),
  look: z.strictObject({ ...looked, match: importMatch.nullable(), matched: z.string().max(100) }).nullable(),
})
