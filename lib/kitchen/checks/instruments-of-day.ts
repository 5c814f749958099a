import 'server-only'
import type { Db } from '../../db/client'
import { boundsOfDay } from '../bounds-of-day'
import { sureOf } from '../sure-of'
import { instrumentColumns } from './check-facts'
import { checkedKinds, judgeShown, offMostOfGauge, offMostOfScale, offMostOfThermometer } from './judge-shown.input'

/**
 * The scales, thermometers and volume gauges in use, each with its last check and whether that was today's, by the hour at which the
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
        checks: {
          select: { at: true, isGood: true, blockMl: true, shownMl: true },
          orderBy: [{ at: 'desc' }, { isGood: 'asc' }],
          take: 1,
        },
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
        last: last && { at: last.at, isGood: last.isGood, isToday: last.at >= day.beganAt, offMl: offOf(last) },
      }
    }),
  }
}

/** By how much a gauge showed too much in a check; null for others. */
function offOf({ blockMl, shownMl }: { blockMl: number | null; shownMl: number | null }): number | null {
  return blockMl === null || shownMl === null ? null : judgeShown({ shown: shownMl, known: blockMl, offMost: 0 }).off
}

/** What an instrument is checked with, and how far off it may be then; null where that goes by a block nobody has named. */
function standardOf(row: {
  kind: string
  mostG: number | null
  resolutionG: number | null
  resolutionC: number | null
  testMassG: number | null
  offMostG: number | null
  offMostC: number | null
  volumeMl: number | null
  blockMl: number | null
  offMostMl: number | null
}) {
  const none = { testMassG: null, mostG: null, blockMl: null, volumeMl: null }
  if (row.kind === 'scale') {
    const { testMassG, mostG } = row
    const offMost = offMostOfScale({ ...row, resolutionG: sureOf(row.resolutionG, 'the steps of a scale') })
    return { ...none, kind: 'scale' as const, testMassG, mostG, offMost }
  }
  if (row.kind === 'volume_gauge') {
    const { blockMl, volumeMl, offMostMl } = row
    const offMost = blockMl === null ? offMostMl : offMostOfGauge({ offMostMl, blockMl })
    return { ...none, kind: 'volume_gauge' as const, blockMl, volumeMl, offMost }
  }
  const offMost = offMostOfThermometer({ ...row, resolutionC: sureOf(row.resolutionC, 'its steps') })
  return { ...none, kind: 'thermometer' as const, offMost }
}
