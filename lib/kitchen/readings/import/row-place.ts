import 'server-only'
import type { ProblemCode } from '../../messages'
import type { Facts } from '../../../words/text'
import { onlyOne } from '../../only-one'
import { isSameLevel } from './guess-match'
import type { ColumnUse, ImportMatch } from './import-readings.input'
import type { ImportBatch, ImportFacts } from './load-import-facts'
import type { ImportRow } from './read-rows'
import { levelOfPiece } from '../rules'

/** What is wrong with a row, at one of its columns, by number from 0, or with the whole of it. */
export type RowFault = { line: number; column: number | null; code: ProblemCode; facts: Facts }
type Told<Value> = { value: Value } | { fault: Omit<RowFault, 'line'> }

const noLevel = [null, null] as const
const isWhole = (cell: string) => /^\d{1,4}$/.test(cell)
const wrong = (column: number | null, code: ProblemCode, facts: Facts = {}) => ({ fault: { column, code, facts } })

/** Where a column of a kind is, from 0; -1 where there is none. */
export function columnOf(match: Pick<ImportMatch, 'columns'>, as: ColumnUse['as']): number {
  return match.columns.findIndex((column) => column.as === as)
}

/**
 * Says of a row which dough it is of: by its code, or by mixing day, arm and which of that arm's doughs it is; by both
 * when both are there and agree.
 */
export function doughOfRow(
  { cells }: ImportRow,
  match: ImportMatch,
  { batches, trial }: Pick<ImportFacts, 'batches' | 'trial'>,
): Told<ImportBatch> {
  const [code, day, arm, dough] = (['code', 'day', 'arm', 'dough'] as const).map((as) => columnOf(match, as)) as [
    number,
    number,
    number,
    number,
  ]
  const text = (column: number) => cells[column] ?? ''
  const of = (column: number, isRight: (batch: ImportBatch) => boolean) => (column < 0 ? () => true : isRight)
  if (code >= 0) {
    const batch = batches.find((each) => each.code === text(code))
    if (!batch) return wrong(code, text(code) === '' ? 'missing' : 'row-code-unknown', { value: text(code) })
    const isDay = of(day, ({ dayNumber }) => String(dayNumber) === text(day))
    if (!isDay(batch)) return wrong(day, 'row-dough-disagrees', { code: batch.code })
    const isArm = of(arm, (each) => each.arm === armOf(text(arm), match))
    return isArm(batch) ? { value: batch } : wrong(arm, 'row-dough-disagrees', { code: batch.code })
  }
  // Days may have been added to those of the plan.
  const days = Math.max(trial.mixingDays, ...batches.map(({ dayNumber }) => dayNumber))
  if (!isWhole(text(day)) || Number(text(day)) < 1 || Number(text(day)) > days)
    return wrong(day, text(day) === '' ? 'missing' : 'row-day-unknown', { value: text(day), days })
  const position = armOf(text(arm), match)
  if (position === undefined) return wrong(arm, text(arm) === '' ? 'missing' : 'row-arm-unknown', { value: text(arm) })
  const ofDay = batches.filter((batch) => batch.dayNumber === Number(text(day)) && batch.arm === position)
  const only = dough < 0 ? onlyOne(ofDay) : null
  const batch = only ?? ofDay.find(({ number }) => String(number) === text(dough))
  return batch
    ? { value: batch }
    : wrong(dough < 0 ? arm : dough, 'row-dough-unknown', { value: text(dough), count: ofDay.length })
}

function armOf(text: string, match: ImportMatch): number | undefined {
  return match.arms.find((each) => each.text === text)?.arm
}

/**
 * Says of each row which piece of its dough it is of: the number that stands there, or, where no column says it, the
 * next one of its level, by the order of the lines.
 */
export function pieceCounter(match: ImportMatch, { factorName, factorLevels, piecesPerBatch }: ImportFacts['trial']) {
  const counts = new Map<string, number>()
  const [piece, level] = [columnOf(match, 'piece'), columnOf(match, 'level')]
  const levels = factorName === null ? [] : factorLevels
  return ({ cells }: ImportRow, batchId: string): Told<{ piece: number; factorLevel: string | null }> => {
    const [numbered, levelText] = [cells[piece] ?? '', cells[level] ?? '']
    const named = level < 0 ? noLevel : [...levels.entries()].find(([, each]) => isSameLevel(each, levelText))
    if (!named) return wrong(level, levelText === '' ? 'missing' : 'row-level-unknown', { value: levelText, levels })
    const [levelAt, levelName] = named
    if (piece >= 0) {
      if (!isWhole(numbered) || Number(numbered) < 1) return wrong(piece, numbered === '' ? 'missing' : 'not-whole')
      return {
        value: {
          piece: Number(numbered),
          factorLevel: levelAt === null ? levelOfPiece(Number(numbered), levels) : levelName,
        },
      }
    }
    const key = `${batchId} ${String(levelAt)}`
    const nth = counts.get(key) ?? 0
    counts.set(key, nth + 1)
    const step = Math.max(1, levels.length)
    const next = (levelAt ?? 0) + 1 + nth * step
    if (next > piecesPerBatch)
      return wrong(level < 0 ? null : level, 'row-too-many-pieces', { max: piecesPerBatch / step })
    return { value: { piece: next, factorLevel: levelName } }
  }
}
