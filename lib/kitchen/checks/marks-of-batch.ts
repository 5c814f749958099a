import 'server-only'
import type { Db } from '../../db/client'
import { checkedKinds, type CheckedKind } from './judge-shown.input'
import { marksOfReadings, type Mark, type Taken } from './marks-of-readings'

/** What was read of a measure, or weighed of the dough. */
export type TakenOfBatch = { measureId: string } | 'weighing'

const kindOfUnit: Readonly<Record<string, CheckedKind>> = { g: 'scale', '°C': 'thermometer' }

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
  measures: readonly { id: string; unit: string }[],
): Promise<Mark<TakenOfBatch>[]> {
  const unitOf = new Map(measures.map(({ id, unit }) => [id, unit]))
  const taken: Taken<TakenOfBatch>[] = [
    ...readings.flatMap(({ measureId, value, ...times }) => {
      const kind = kindOfUnit[unitOf.get(measureId) ?? '']
      const massG = kind === 'scale' ? value : null
      return kind ? [{ what: { measureId }, kind, at: momentOf(times), massG }] : []
    }),
    ...weighings.map((times) => ({
      what: 'weighing' as const,
      kind: 'scale' as const,
      at: momentOf(times),
      massG: null,
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
    instruments.map(({ id, name, kind, mostG, createdAt, endedAt, checks }) => ({
      id,
      name,
      kind: kind === 'scale' ? 'scale' : 'thermometer',
      mostG,
      from: createdAt.getTime(),
      until: endedAt?.getTime() ?? null,
      checks: [...checks, ...around.flatMap((each) => (each.id === id ? each.checks : []))].map(({ at, isGood }) => ({
        at: at.getTime(),
        isGood,
      })),
    })),
  )
}

/** By the device's clock, and never after it came in. */
function momentOf({ takenAt, receivedAt }: { takenAt: Date; receivedAt: Date }): number {
  return Math.min(takenAt.getTime(), receivedAt.getTime())
}
