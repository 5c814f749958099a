import 'server-only'
import type { TrialContent } from './content-of-trial'

export type Difference =
  | { kind: 'dough'; code: string; field: DoughField }
  | { kind: 'weighing-changed' | 'weighing-gone' | 'weighing-added'; code: string; ingredient: string }
  /** What was found later of a dough, and who signed it. */
  | { kind: 'found'; code: string }
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
 * The first thing in which a trial's rows are not what was closed, doughs before readings, these before weighings and
 * these before what was found later; null when nothing differs that a result rests on.
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
    kind: 'reading-changed' | 'reading-gone' | 'reading-added',
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
  const codeOf = (dough: string) => codes.get(dough) ?? ''
  return weighingDifference(closed, now, codeOf) ?? foundDifference(closed, now, codeOf)
}

/** Of a trial that was closed before weighings were written down, any that is there now was added. */
function weighingDifference(
  closed: TrialContent,
  now: TrialContent,
  codeOf: (dough: string) => string,
): Difference | null {
  const lines = [...(closed.weighings?.lines ?? []), ...(now.weighings?.lines ?? [])]
  const found = (kind: Extract<Difference, { ingredient: string }>['kind'], entry: Weighing): Difference => ({
    kind,
    code: codeOf(entry.dough),
    ingredient: lines.find(({ ingredient }) => ingredient.id === entry.ingredient)?.ingredient.name ?? '',
  })
  const there = new Map((now.weighings?.entries ?? []).map((entry) => [entry.id, entry]))
  for (const entry of closed.weighings?.entries ?? []) {
    const other = there.get(entry.id)
    if (!other) return found('weighing-gone', entry)
    if (JSON.stringify(valuesOf(entry)) !== JSON.stringify(valuesOf(other))) return found('weighing-changed', entry)
    there.delete(entry.id)
  }
  for (const entry of there.values()) return found('weighing-added', entry)
  return null
}

function foundDifference(
  closed: TrialContent,
  now: TrialContent,
  codeOf: (dough: string) => string,
): Difference | null {
  // Names of people may change.
  const said = ({ id, dough, object, what, at, by, signed }: TrialContent['found'][number]) =>
    JSON.stringify([id, dough, object, what, at, by.id, signed && [signed.as, signed.by.id, signed.at]])
  const there = new Map(now.found.map((cause) => [cause.id, said(cause)]))
  const other = closed.found.find((cause) => there.get(cause.id) !== said(cause))
  const added = now.found.find(({ id }) => closed.found.every((cause) => cause.id !== id))
  const first = other ?? added
  return first ? { kind: 'found', code: codeOf(first.dough) } : null
}

type Reading = TrialContent['readings'][number]
type Weighing = NonNullable<TrialContent['weighings']>['entries'][number]

/** Names of people may change, what they read may not. */
function valuesOf({ by, ...rest }: Reading | Weighing): unknown {
  return Object.entries({ ...rest, by: by.id }).sort(([a], [b]) => (a < b ? -1 : 1))
}

/** As it was typed; the value itself where that alone is another. */
function shown({ value, valueEntered, unitEntered }: Reading): string {
  return `${valueEntered}\u00a0${unitEntered} (${value})`
}
