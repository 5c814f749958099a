import 'server-only'
import { isBeforeMixing } from '../before-mixing.input'
import { armLetters } from '../../trials/rules'
import type { ColumnUse, ImportMatch } from './import-readings.input'
import type { ImportFacts } from './load-import-facts'
import type { ImportTable } from './read-rows'

type Facts = Pick<ImportFacts, 'batches' | 'measures'> & {
  trial: Pick<ImportFacts['trial'], 'arms' | 'factorName' | 'factorLevels'>
}
type PlainUse = Exclude<ColumnUse['as'], 'measure'>

/** Names that columns commonly have, without blanks and marks. Common practice, no source. */
const usualNames: readonly (readonly [PlainUse, readonly string[]])[] = [
  ['code', ['code', 'doughcode', 'batchcode', 'batch']],
  ['day', ['day', 'mixingday', 'replicate', 'block']],
  ['arm', ['arm', 'recipe', 'treatment', 'dough', 'testdough']],
  ['dough', ['doughno', 'doughnumber', 'mix', 'mixno']],
  ['piece', ['piece', 'pieceno', 'loaf', 'loafno']],
  ['level', ['level']],
  ['time', ['time', 'taken', 'takenat', 'date', 'when']],
  ['good', ['good', 'goodpieces', 'piecesgood']],
]

/** A guess at how a table is to be read, from its header and its cells, for a person to look at and change. */
export function guessMatch({ header, rows }: ImportTable, by: ImportMatch['separator'], facts: Facts): ImportMatch {
  const decimal = guessDecimal(
    rows.map(({ cells }) => cells),
    by,
  )
  const taken = new Set<ColumnUse['as']>()
  const columns = header.map((name, column): ColumnUse => {
    const use = guessColumn(
      name,
      rows.map(({ cells }) => cells[column] ?? ''),
      facts,
    )
    // A measure may have several columns, its repeats; anything else has one.
    if (use.as === 'measure') return use
    if (taken.has(use.as)) return { as: 'nothing' }
    if (use.as !== 'nothing') taken.add(use.as)
    return use
  })
  return { separator: by, decimal, columns, arms: guessArms(textsOfArms(columns, rows), facts.trial.arms) }
}

/** The texts that stand in the arm column, each once, in their order. */
export function textsOfArms(columns: readonly ColumnUse[], rows: ImportTable['rows']): string[] {
  const at = columns.findIndex(({ as }) => as === 'arm')
  return at < 0 ? [] : [...new Set(rows.flatMap(({ cells }) => cells[at] || []))].slice(0, 50)
}

/** Which arm a text stands for: its name, its letter or its position; texts that say none of these are left open. */
export function guessArms(texts: readonly string[], arms: Facts['trial']['arms']): ImportMatch['arms'] {
  return texts.flatMap((text) => {
    const plain = plainName(text)
    const arm =
      arms.find(({ name }) => plainName(name) === plain) ??
      arms.find(({ position }) => plainName(armLetters[position] ?? '') === plain || String(position) === plain)
    return arm ? [{ text, arm: arm.position }] : []
  })
}

function guessDecimal(cells: readonly (readonly string[])[], by: string): ImportMatch['decimal'] {
  if (by === ',') return '.'
  const count = (form: RegExp) => cells.flat().filter((cell) => form.test(cell)).length
  return count(/^[-\u2212]?\d+,\d+$/) > count(/^[-\u2212]?\d+\.\d+$/) ? ',' : '.'
}

function guessColumn(header: string, cells: readonly string[], { batches, measures, trial }: Facts): ColumnUse {
  const name = plainName(header)
  const codes = new Set(batches.map(({ code }) => code))
  const written = cells.filter((cell) => cell !== '')
  if (written.length > 0 && written.every((cell) => codes.has(cell))) return { as: 'code' }
  const usual = usualNames.find(([, names]) => names.includes(name))
  if (usual) return { as: usual[0] }
  if (name === '') return { as: 'nothing' }
  if (isFactor(name, written, trial)) return { as: 'level' }
  const measure = measureOf(name, measures)
  return measure ? { as: 'measure', measureId: measure.id, unit: unitIn(header, measure.units) } : { as: 'nothing' }
}

/** A column that is called like the factor and holds its levels, most of the time: one slip is a row's fault, not the column's. */
function isFactor(header: string, written: readonly string[], { factorName, factorLevels }: Facts['trial']): boolean {
  const factor = plainName(factorName ?? '')
  if (factor === '' || !(factor.includes(header) || header.includes(factor))) return false
  return 2 * written.filter((cell) => factorLevels.some((level) => isSameLevel(cell, level))).length >= written.length
}

/**
 * The measure whose name or code stands in the header, of several the longest; else the only one that ends with it, where
 * what is read before mixing is meant only by its whole name.
 */
function measureOf(header: string, measures: Facts['measures']) {
  const named = measures
    .filter(({ derivation }) => derivation === null)
    .flatMap((measure) => [measure.name, measure.code ?? ''].map((name) => ({ measure, name: plainName(name) })))
  const [within] = named
    .filter(({ name }) => name.length > 2 && header.includes(name))
    .sort((a, b) => b.name.length - a.name.length)
  if (within || header.length < 3) return within?.measure
  const ending = new Set(
    named
      .filter(({ name, measure }) => name.endsWith(header) && !isBeforeMixing(measure.code))
      .map(({ measure }) => measure),
  )
  return ending.size === 1 ? [...ending][0] : undefined
}

/** The unit that ends a header, 'loaf weight (kg)' or 'loaf_weight_kg'; the base unit where none does. */
function unitIn(header: string, units: readonly string[]): string {
  const [last = ''] = header
    .replace(/[()[\]]/g, ' ')
    .trim()
    .split(/[\s,_]+/)
    .slice(-1)
  return units.find((unit) => unit.toLowerCase() === last.toLowerCase()) ?? units[0] ?? ''
}

/** Two texts of a level are one when they differ in capitals or blanks alone. */
export function isSameLevel(a: string, b: string): boolean {
  return a.trim().toLowerCase() === b.trim().toLowerCase()
}

function plainName(text: string): string {
  return text.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '')
}
