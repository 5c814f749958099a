import 'server-only'
import type { ProblemCode } from '../../messages'
import type { ImportMatch } from './import-readings.input'
import type { ImportBatch, ImportFacts } from './load-import-facts'
import type { ImportTable } from './read-rows'
import { readTimeCell } from './read-time-cell'
import { columnOf, doughOfRow, pieceCounter, type RowFault } from './row-place'
import { timeFault } from '../rules'

export type PlacedRow = {
  line: number
  cells: readonly string[]
  batchId: string
  /** Null where no piece is read, or where it cannot be said which, which is a fault then. */
  piece: { piece: number; factorLevel: string | null } | null
  takenAt: Date
}

/** A dough that the file has rows of: from when to when they were taken, and how many good pieces a column says. */
export type ImportedDough = { batch: ImportBatch; first: Date; last: Date; good: number | null }

type Asked = {
  facts: ImportFacts
  table: ImportTable
  match: ImportMatch
  /** When the readings were taken, where no column says it. */
  dayMoment: Date | null
  /** The doughs were baked outside the shift, so they need not be begun there. */
  isOutside: boolean
  now: Date
}

/** Says of each row of a table of which dough and piece it is and when it was taken; what cannot be said is a fault. */
export function placeRows(q: Asked): { placed: PlacedRow[]; doughs: ImportedDough[]; faults: RowFault[] } {
  const { facts, table, match, now } = q
  const [timeAt, goodAt] = [columnOf(match, 'time'), columnOf(match, 'good')]
  const pieceColumns = match.columns.flatMap((column, at) =>
    column.as === 'measure' && facts.measures.some(({ id, level }) => id === column.measureId && level === 'piece')
      ? [at]
      : [],
  )
  const nextPiece = pieceCounter(match, facts.trial)
  const doughs = new Map<string, ImportedDough>()
  const placed: PlacedRow[] = []
  const faults: RowFault[] = []

  for (const row of table.rows) {
    const { line, cells } = row
    const fault = (column: number | null, code: ProblemCode, about: RowFault['facts'] = {}) =>
      void faults.push({ line, column, code, facts: about })
    if (row.isBroken) {
      fault(null, 'row-quotes')
      continue
    }
    if (cells.slice(table.header.length).some((cell) => cell !== ''))
      fault(null, 'row-too-wide', { count: table.header.length })
    const told = doughOfRow(row, match, facts)
    if ('fault' in told) {
      faults.push({ line, ...told.fault })
      continue
    }
    const batch = told.value
    const asked = pieceColumns.length > 0 ? nextPiece(row, batch.id) : null
    const isRead = pieceColumns.some((at) => (cells[at] ?? '') !== '')
    if (asked && 'fault' in asked && isRead) faults.push({ line, ...asked.fault })
    const timeText = cells[timeAt] ?? ''
    const takenAt = timeAt < 0 ? q.dayMoment : readTimeCell(timeText, facts.timeZone)
    const wrongTime = takenAt && timeFault(takenAt, now, facts.trial.createdAt)
    if (!takenAt) fault(timeAt, timeText === '' ? 'missing' : 'row-time')
    else if (wrongTime) fault(timeAt < 0 ? null : timeAt, `row-${wrongTime}`)

    const known = doughs.get(batch.id)
    if (!known && !q.isOutside && batch.state === 'waiting') fault(null, 'row-not-begun')
    if (!known && batch.state === 'not_baked') fault(null, 'row-not-baked')
    const good = goodOf(cells[goodAt] ?? '', batch.piecesMade ?? facts.trial.piecesPerBatch)
    if (good !== null && typeof good !== 'number') fault(goodAt, good.code, good.facts)
    else if (known && known.good !== null && good !== null && good !== known.good)
      fault(goodAt, 'row-good-differs', { good: known.good })
    doughs.set(
      batch.id,
      widened(
        known ?? { batch, first: takenAt ?? now, last: takenAt ?? now, good: null },
        takenAt,
        typeof good === 'number' ? good : null,
      ),
    )
    placed.push({
      line,
      cells,
      batchId: batch.id,
      piece: asked && 'value' in asked ? asked.value : null,
      takenAt: takenAt ?? now,
    })
  }
  return { placed, doughs: [...doughs.values()], faults }
}

function goodOf(cell: string, made: number): number | null | { code: ProblemCode; facts: RowFault['facts'] } {
  if (cell === '') return null
  if (!/^\d{1,5}$/.test(cell)) return { code: 'not-whole', facts: {} }
  return Number(cell) > made ? { code: 'too-big', facts: { max: made } } : Number(cell)
}

function widened(dough: ImportedDough, at: Date | null, good: number | null): ImportedDough {
  return {
    ...dough,
    first: at && at < dough.first ? at : dough.first,
    last: at && at > dough.last ? at : dough.last,
    good: dough.good ?? good,
  }
}
