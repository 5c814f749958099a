import 'server-only'
import { v7 as uuid } from 'uuid'
import type { Db, Tx } from '../db/client'
import { log } from '../db/log'
import type { StationActor } from './actor'
import { hashSecret, makeSecret } from './secret'
import { sessionTouchMs } from './session-life'

const hourMs = 60 * 60_000

type Place = { bakeryId: string; stationId: string }

/** Begins a person's shift at a station, after the right PIN or badge. @returns its token, which is kept nowhere but on the tablet */
export async function beginStationShift(
  tx: Tx,
  { bakeryId, stationId, personId, byBadge }: Place & { personId: string; byBadge: boolean },
  now: Date,
): Promise<{ token: string; endsAt: Date }> {
  const token = makeSecret()
  const id = uuid()
  const { pinLastsH } = await tx.bakery.findUniqueOrThrow({ where: { bakeryId }, select: { pinLastsH: true } })
  const endsAt = new Date(now.getTime() + pinLastsH * hourMs)
  // A new PIN takes the place of the former one there.
  await endStationShifts(tx, { bakeryId, stationId, personId }, now)
  await tx.stationShift.create({
    data: { bakeryId, id, stationId, personId, beganAt: now, lastSeenAt: now, endsAt, byBadge },
  })
  await tx.signInPointer.create({
    data: { hash: hashSecret('station-shift', token), kind: 'station_shift', bakeryId, targetId: id },
  })
  return { token, endsAt }
}

/** Ends open shifts: all of a station, all of a person, a person's at a station, or those that their badge began. */
export async function endStationShifts(
  tx: Tx,
  whose: { bakeryId: string } & ({ stationId: string } | { personId: string; byBadge?: true }),
  now: Date,
): Promise<void> {
  await tx.stationShift.updateMany({ where: { ...whose, endedAt: null }, data: { endedAt: now } })
}

/** Ends open shifts of a bakery this long after their PIN at the latest; one that ends sooner is left as it is. */
export async function shortenStationShifts(tx: Tx, bakeryId: string, pinLastsH: number): Promise<void> {
  await tx.$executeRaw`
    UPDATE station_shift SET ends_at = began_at + make_interval(hours => ${pinLastsH}::int)
    WHERE bakery_id = ${bakeryId}::uuid AND ended_at IS NULL AND ends_at > began_at + make_interval(hours => ${pinLastsH}::int)`
}

/** Notes at most once a minute that a station was used, and the shift on it. It must not change an answer. */
export async function touchStation(db: Db, actor: StationActor, now: Date): Promise<void> {
  const { bakeryId, stationId } = actor
  const due = new Date(now.getTime() - sessionTouchMs)
  try {
    if (actor.stationSeenAt === null || actor.stationSeenAt < due)
      await db.station.updateMany({
        where: { bakeryId, id: stationId, OR: [{ lastSeenAt: null }, { lastSeenAt: { lt: due } }] },
        data: { lastSeenAt: now },
      })
    if (actor.personId !== null && actor.shiftSeenAt < due)
      await db.stationShift.updateMany({
        where: { bakeryId, id: actor.shiftId, endedAt: null, lastSeenAt: { lt: due } },
        data: { lastSeenAt: now },
      })
  } catch (error) {
    log.warn({ event: 'station-not-touched', error })
  }
}
