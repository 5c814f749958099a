import 'server-only'
import type { TrialContent } from './content-of-trial'

export type Difference =
  | { kind: 'dough'; code: string; field: DoughField }
  | {
      kind: 'reading-changed' | 'reading-gone' | 'reading-added'
      code: string
      readingId: string
      measureId: string
      piece: number | null
      was: string | null
      is: string | null
    }

const doughFields = [
  'code',
  'arm',
  'day',
  'plannedOrder',
  'state',
  'stateWhy',
  'begunAt',
  'doneAt',
  'piecesMade',
  'piecesGood',
] as const
export type DoughField = (typeof doughFields)[number] | 'gone' | 'added'

/**
 * The first thing in which a trial's rows are not what was closed, doughs before readings; null when nothing differs
 * that a result rests on.
 */
export function firstDifference(closed: TrialContent, now: TrialContent): Difference | null {
  const doughsNow = new Map(now.doughs.map((dough) => [dough.id, dough]))
  for (const dough of closed.doughs) {
    const other = doughsNow.get(dough.id)
    if (!other) return { kind: 'dough', code: dough.code, field: 'gone' }
    const field = doughFields.find((each) => dough[each] !== other[each])
    if (field) return { kind: 'dough', code: dough.code, field }
    doughsNow.delete(dough.id)
  }
  for (const { code } of doughsNow.values()) return { kind: 'dough', code, field: 'added' }
  const codes = new Map(closed.doughs.map(({ id, code }) => [id, code]))
  const readingsNow = new Map(now.readings.map((reading) => [reading.id, reading]))
  const found = (
    kind: Exclude<Difference['kind'], 'dough'>,
    was: Reading | null,
    is: Reading | null,
  ): Difference | null => {
    const either = was ?? is
    if (!either) return null
    const { id, dough, measure, piece } = either
    return {
      kind,
      code: codes.get(dough) ?? '',
      readingId: id,
      measureId: measure,
      piece,
      was: was && shown(was),
      is: is && shown(is),
    }
  }
  for (const reading of closed.readings) {
    const other = readingsNow.get(reading.id)
    if (!other) return found('reading-gone', reading, null)
    if (JSON.stringify(valuesOf(reading)) !== JSON.stringify(valuesOf(other)))
      return found('reading-changed', reading, other)
    readingsNow.delete(reading.id)
  }
  for (const reading of readingsNow.values()) return found('reading-added', null, reading)
  return null
}

type Reading = TrialContent['readings'][number]

/** Names of people may change, what they read may not. */
function valuesOf({ by, ...reading }: Reading): unknown {
  return Object.entries({ ...reading, by: by.id }).sort(([a], [b]) => (a < b ? -1 : 1))
}

/** As it was typed; the value itself where that alone is another. */
function shown({ value, valueEntered, unitEntered }: Reading): string {
  return `${valueEntered}\u00a0${unitEntered} (${value})`
}
