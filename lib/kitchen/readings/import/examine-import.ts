import 'server-only'
import { createHash } from 'node:crypto'
import type { z } from 'zod'
import { dayInZone } from '../../day-in-zone'
import { momentOf } from '../../moment-of'
import type { Problem } from '../../refusal'
import type { MixedBatch } from '../../batches/rules'
import { guessArms, guessMatch, textsOfArms } from './guess-match'
import {
  mostImported,
  type ImportMatch,
  type importReadingsInput,
  type previewImportInput,
} from './import-readings.input'
import type { ImportFacts } from './load-import-facts'
import { matchProblems } from './match-problems'
import { matchedOf } from './matched-of'
import { outsideMoves, type OutsideMoves } from '../outside-moves'
import { placeRows, type ImportedDough } from './place-rows'
import { readImport, type ImportRead } from './read-import'
import { decodeImport, guessSeparator, readRows, type ImportTable } from './read-rows'

type Preview = NonNullable<z.output<typeof previewImportInput>['look']>
type Import = Omit<z.output<typeof importReadingsInput>, 'trialId'>

/** A file that cannot be read at all has problems and no table; one that cannot be matched has no rows. */
export type Examined = {
  file: { name: string; sha256: string }
  table: ImportTable | null
  match: ImportMatch | null
  problems: Problem[]
  rows: (ImportRead & { doughs: ImportedDough[]; outside: OutsideMoves | null }) | null
}

/**
 * Reads a file from its bytes against a trial, as it is matched or as it is guessed. Preview and import both do it
 * anew, so that what is stored never rests on what was shown.
 * @param mixed all batches of the trial
 */
export function examineImport(q: {
  facts: ImportFacts
  mixed: readonly (MixedBatch & { code: string })[]
  look: Preview | Import
  now: Date
}): Examined {
  const { facts, look, now } = q
  const { bytes, name } = look.file
  const file = { name, sha256: createHash('sha256').update(bytes).digest('hex') }
  const failed = (code: Problem['code']): Examined => ({
    file,
    table: null,
    match: null,
    problems: [{ path: 'file', code, facts: {} }],
    rows: null,
  })
  const decoded = decodeImport(bytes)
  if ('fault' in decoded) return failed(decoded.fault)
  const told = 'matched' in look ? tableToLookAt(decoded.text, look, facts) : tableOf(decoded.text, look.match)
  if ('fault' in told) return failed(told.fault)
  const { table, match } = told
  const problems = matchProblems(match, table.header.length, look.day, facts)
  if (table.rows.length * match.columns.filter(({ as }) => as === 'measure').length > mostImported.readings)
    problems.push({ path: 'file', code: 'file-too-many-readings', facts: {} })
  if (problems.length > 0) return { file, table, match, problems, rows: null }
  const { placed, doughs, faults } = placeRows({
    facts,
    table,
    match,
    dayMoment: look.day === null ? null : middleOf(look.day, facts.timeZone, now),
    isOutside: look.outside !== null,
    now,
  })
  const read = readImport({ facts, match, placed, keepOdd: look.keepOdd })
  const outside = look.outside && outsideMoves({ facts, doughs, fresh: read.fresh, mixed: q.mixed })
  if (outside && outside.cleanDown.length > 0 && !look.outside?.cleanDownDone)
    problems.push({ path: 'cleanDownDone', code: 'clean-down-untold', facts: {} })
  if (outside?.skipped && !look.outside?.orderWhy) problems.push({ path: 'orderWhy', code: 'missing', facts: {} })
  // What is wrong with a row's place is found at each of its readings, and told once.
  const each = new Map([...faults, ...read.faults].map((fault) => [JSON.stringify(fault), fault]))
  const byLine = [...each.values()].sort((a, b) => a.line - b.line || (a.column ?? -1) - (b.column ?? -1))
  return { file, table, match, problems, rows: { ...read, faults: byLine, doughs, outside } }
}

function tableOf(text: string, match: ImportMatch) {
  const table = readRows(text, match.separator)
  return 'fault' in table ? table : { table, match }
}

/**
 * The table as it was matched, with a guess at the arms that were left open, or, when the match is of another table, as
 * it is guessed: by the separator that was chosen, if another one was, else by the one that fits.
 */
function tableToLookAt(text: string, { match, matched }: Preview, facts: ImportFacts) {
  const asMatched = match && readRows(text, match.separator)
  if (match && asMatched && !('fault' in asMatched) && matchedOf(asMatched.header, match.separator) === matched) {
    const open = textsOfArms(match.columns, asMatched.rows).filter(
      (each) => !match.arms.some((arm) => arm.text === each),
    )
    return { table: asMatched, match: { ...match, arms: [...match.arms, ...guessArms(open, facts.trial.arms)] } }
  }
  const separator = match && !matched.startsWith(match.separator) ? match.separator : guessSeparator(text)
  const table = readRows(text, separator)
  return 'fault' in table ? table : { table, match: guessMatch(table, separator, facts) }
}

/** Noon of a day by the bakery's clock; of today, no later than now. */
function middleOf(day: string, timeZone: string, now: Date): Date {
  const noon = new Date(momentOf(day, '12:00', timeZone))
  return noon > now && day === dayInZone(now, timeZone) ? now : noon
}
