import 'server-only'
import type { Db } from '../../db/client'
import { sureOf } from '../sure-of'
import { checkedKinds, type CheckedKind } from './judge-shown.input'
import { isByDisplacement } from './is-by-displacement'
import { marksOfReadings, type Mark, type Taken } from './marks-of-readings'

/** What was read of a measure, or weighed of the dough. */
export type TakenOfBatch = { measureId: string } | 'weighing'

type Measured = { id: string; unit: string; method: string }

type Batch = {
  readings: readonly { measureId: string; value: number; takenAt: Date; receivedAt: Date }[]
  weighings: readonly { takenAt: Date; receivedAt: Date }[]
}

/**
 * What of a dough was read or weighed around a failed check. Of what was weighed neither mass nor planned scale is looked
 * at, because those tell which dough it is.
 */
export async function marksOfBatch(
  db: Db,
  bakeryId: string,
  { readings, weighings }: Batch,
  measures: readonly Measured[],
): Promise<Mark<TakenOfBatch>[]> {
  const kinds = new Map(measures.map((measure) => [measure.id, kindOf(measure)]))
  const taken: Taken<TakenOfBatch>[] = [
    ...readings.flatMap(({ measureId, value, ...times }) => {
      const kind = kinds.get(measureId) ?? null
      const amount = kind === 'thermometer' ? null : value
      return kind ? [{ what: { measureId }, kind, at: momentOf(times), amount }] : []
    }),
    ...weighings.map((times) => ({
      what: 'weighing' as const,
      kind: 'scale' as const,
      at: momentOf(times),
      amount: null,
    })),
  ]
  if (taken.length === 0) return []
  const first = new Date(Math.min(...taken.map(({ at }) => at)))
  const last = new Date(Math.max(...taken.map(({ at }) => at)))
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

/** What a measure is read with, of what is checked. */
function kindOf(measure: Measured): CheckedKind | null {
  if (measure.unit === 'g') return 'scale'
  if (measure.unit === '°C') return 'thermometer'
  return isByDisplacement(measure) ? 'volume_gauge' : null
}

/** By the device's clock, and never after it came in. */
function momentOf({ takenAt, receivedAt }: { takenAt: Date; receivedAt: Date }): number {
  return Math.min(takenAt.getTime(), receivedAt.getTime())
}
