import 'server-only'
import type { Db } from '../../db/client'
import { boundsOfDay } from '../bounds-of-day'
import { sureOf } from '../sure-of'
import { instrumentColumns } from './check-facts'
import { checkedKinds, offMostOfScale, offMostOfThermometer } from './judge-shown.input'

/**
 * The scales and thermometers in use, each with its last check and whether that was today's, by the hour at which the
 * bakery's day turns; and when that day began and ends. It is the same for everybody.
 */
export async function instrumentsOfDay(db: Db, bakeryId: string, now: Date) {
  const [clock, rows] = await Promise.all([
    db.bakery.findUniqueOrThrow({ where: { bakeryId }, select: { timeZone: true, dayTurnsAtH: true } }),
    db.equipment.findMany({
      where: { bakeryId, kind: { in: [...checkedKinds] }, endedAt: null },
      select: {
        ...instrumentColumns,
        // Of checks at one moment the failed one counts.
        checks: { select: { at: true, isGood: true }, orderBy: [{ at: 'desc' }, { isGood: 'asc' }], take: 1 },
      },
      orderBy: [{ kind: 'asc' }, { name: 'asc' }, { id: 'asc' }],
    }),
  ])
  const day = boundsOfDay(now, clock)
  return {
    day,
    instruments: rows.map((row) => {
      const [last = null] = row.checks
      return {
        id: row.id,
        name: row.name,
        ...standardOf(row),
        last: last && { ...last, isToday: last.at >= day.beganAt },
      }
    }),
  }
}

/** What an instrument is checked with, and how far off it may be then. */
function standardOf(row: {
  kind: string
  mostG: number | null
  resolutionG: number | null
  resolutionC: number | null
  testMassG: number | null
  offMostG: number | null
  offMostC: number | null
}) {
  if (row.kind === 'scale') {
    const { testMassG, mostG } = row
    const offMost = offMostOfScale({ ...row, resolutionG: sureOf(row.resolutionG, 'the steps of a scale') })
    return { kind: 'scale' as const, testMassG, mostG, offMost }
  }
  const offMost = offMostOfThermometer({ ...row, resolutionC: sureOf(row.resolutionC, 'its steps') })
  return { kind: 'thermometer' as const, testMassG: null, mostG: null, offMost }
}
