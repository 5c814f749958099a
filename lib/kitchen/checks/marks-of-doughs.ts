import 'server-only'
import type { Db } from '../../db/client'
import { sureOf } from '../sure-of'
import { checkedKinds, type CheckedKind } from './judge-shown.input'
import { isByDisplacement } from './is-by-displacement'
import { marksOfReadings, type Mark, type Taken } from './marks-of-readings'

/** What was read of a measure of a dough, or weighed for it. */
export type TakenOfDough = { batchId: string; of: { measureId: string } | 'weighing' }

type Measured = { id: string; code: string | null; name: string; unit: string; method: string }

type Dough = {
  id: string
  readings: readonly { measureId: string; value: number; takenAt: Date; receivedAt: Date }[]
  weighings: readonly { takenAt: Date; receivedAt: Date }[]
}

/**
 * What of some doughs was read or weighed around a failed check. Of what was weighed neither mass nor planned scale is
 * looked at, because those tell which dough it is.
 * @param doughs each with the readings of it that hold
 */
export async function marksOfDoughs(
  db: Db,
  bakeryId: string,
  doughs: readonly Dough[],
  measures: readonly Measured[],
): Promise<Mark<TakenOfDough>[]> {
  const kinds = new Map(measures.map((measure) => [measure.id, kindOf(measure)]))
  const taken = doughs.flatMap(({ id: batchId, readings, weighings }): Taken<TakenOfDough>[] => [
    ...readings.flatMap(({ measureId, value, ...times }) => {
      const kind = kinds.get(measureId) ?? null
      const amount = kind === 'thermometer' ? null : value
      return kind ? [{ what: { batchId, of: { measureId } }, kind, at: momentOf(times), amount }] : []
    }),
    ...weighings.map((times) => ({
      what: { batchId, of: 'weighing' as const },
      kind: 'scale' as const,
      at: momentOf(times),
      amount: null,
    })),
  ])
  if (taken.length === 0) return []
  const times = taken.map(({ at }) => at).sort((a, b) => a - b)
  const [first, last] = [new Date(times.at(0) ?? 0), new Date(times.at(-1) ?? 0)]
  const select = { at: true, isGood: true } as const
  const where = { bakeryId, kind: { in: [...checkedKinds] } }
  const [instruments, before, after] = await Promise.all([
    db.equipment.findMany({
      where,
      select: {
        id: true,
        name: true,
        kind: true,
        mostG: true,
        volumeMl: true,
        createdAt: true,
        endedAt: true,
        checks: { where: { at: { gte: first, lte: last } }, select },
      },
    }),
    // Of checks at one moment the failed one comes first.
    db.equipment.findMany({
      where,
      select: {
        id: true,
        checks: { where: { at: { lt: first } }, select, orderBy: [{ at: 'desc' }, { isGood: 'asc' }], take: 1 },
      },
    }),
    db.equipment.findMany({
      where,
      select: {
        id: true,
        checks: { where: { at: { gt: last } }, select, orderBy: [{ at: 'asc' }, { isGood: 'asc' }], take: 1 },
      },
    }),
  ])
  const around = [...before, ...after]
  return marksOfReadings(
    taken,
    instruments.map(({ id, name, kind, mostG, volumeMl, createdAt, endedAt, checks }) => ({
      id,
      name,
      kind: sureOf(
        checkedKinds.find((each) => each === kind),
        'a kind that is checked',
      ),
      most: mostG ?? volumeMl,
      from: createdAt.getTime(),
      until: endedAt?.getTime() ?? null,
      checks: [...checks, ...around.flatMap((each) => (each.id === id ? each.checks : []))].map(({ at, isGood }) => ({
        at: at.getTime(),
        isGood,
      })),
    })),
  )
}

/** Of which measures, and how many readings of each, marks are, and whether something was weighed. */
export function markedIn(marked: readonly TakenOfDough[], measures: readonly Measured[]) {
  return {
    weighed: marked.some(({ of }) => of === 'weighing'),
    readings: measures.flatMap(({ id, code, name }) => {
      const count = marked.filter(({ of }) => of !== 'weighing' && of.measureId === id).length
      return count === 0 ? [] : [{ code, name, count }]
    }),
  }
}

/** What a measure is read with, of what is checked. */
function kindOf(measure: Pick<Measured, 'unit' | 'method'>): CheckedKind | null {
  if (measure.unit === 'g') return 'scale'
  if (measure.unit === '°C') return 'thermometer'
  return isByDisplacement(measure) ? 'volume_gauge' : null
}

/** By the device's clock, and never after it came in. */
function momentOf({ takenAt, receivedAt }: { takenAt: Date; receivedAt: Date }): number {
  return Math.min(takenAt.getTime(), receivedAt.getTime())
}
