import 'server-only'
import { createHash } from 'node:crypto'
import type { z } from 'zod'
import { dayInZone } from '../day-in-zone'
import { momentOf } from '../moment-of'
import type { Problem } from '../refusal'
import type { MixedBatch } from '../shifts/rules'
import { guessArms, guessMatch, textsOfArms } from './guess-match'
import { mostImported, type ImportMatch, type importReadingsInput, type previewImportInput } from './import-readings.input'
import type { ImportFacts } from './load-import-facts'
import { matchProblems } from './match-problems'
import { outsideMoves, type OutsideMoves } from './outside-moves'
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
export function examineImport(q: { facts: ImportFacts; mixed: readonly (MixedBatch & { code: string })[]; look: Preview | Import; now: Date }): Examined {
  const { facts, look, now } = q
  const { bytes, name } = look.file
  const file = { name, sha256: createHash('sha256').update(bytes).digest('hex') }
  const failed = (code: Problem['code']): Examined => ({ file, table: null, match: null, problems: [{ path: 'file', code, facts: {} }], rows: null })
  const decoded = decodeImport(bytes)
  if ('fault' in decoded) return failed(decoded.fault)
  const asked = 'separator' in look ? look.separator : null
  const separator = look.match?.separator ?? asked ?? guessSeparator(decoded.text)
  const table = readRows(decoded.text, separator)
  if ('fault' in table) return failed(table.fault)
  const match = !look.match ? guessMatch(table, separator, facts) : 'separator' in look ? withArms(look.match, table, facts) : look.match
  const problems = matchProblems(match, table.header.length, look.day, facts)
  if (table.rows.length * match.columns.filter(({ as }) => as === 'measure').length > mostImported.readings) problems.push({ path: 'file', code: 'file-too-many-readings', facts: {} })
  if (problems.length > 0) return { file, table, match, problems, rows: null }
  const { placed, doughs, faults } = placeRows({ facts, table, match, dayMoment: look.day === null ? null : middleOf(look.day, facts.timeZone, now), isOutside: look.outside !== null, now })
  const read = readImport({ facts, match, placed, keepOdd: look.keepOdd })
  const outside = look.outside && outsideMoves({ facts, doughs, fresh: read.fresh, mixed: q.mixed })
  if (outside && outside.cleanDown.length > 0 && !look.outside?.cleanDownDone) problems.push({ path: 'cleanDownDone', code: 'clean-down-needed', facts: {} })
  if (outside?.skipped && !look.outside?.orderWhy) problems.push({ path: 'orderWhy', code: 'missing', facts: {} })
  // What is wrong with a row's place is found at each of its readings, and told once.
  const each = new Map([...faults, ...read.faults].map((fault) => [JSON.stringify(fault), fault]))
  const byLine = [...each.values()].sort((a, b) => a.line - b.line || (a.column ?? -1) - (b.column ?? -1))
  return { file, table, match, problems, rows: { ...read, faults: byLine, doughs, outside } }
}

/** A match with a guess at every arm that it leaves open, to be looked at. */
function withArms(match: ImportMatch, { rows }: ImportTable, { trial }: ImportFacts): ImportMatch {
  const open = textsOfArms(match.columns, rows).filter((text) => !match.arms.some((arm) => arm.text === text))
  return { ...match, arms: [...match.arms, ...guessArms(open, trial.arms)] }
}

/** Noon of a day by the bakery's clock; of today, no later than now. */
function middleOf(day: string, timeZone: string, now: Date): Date {
  const noon = new Date(momentOf(day, '12:00', timeZone))
  return noon > now && day === dayInZone(now, timeZone) ? now : noon
}
