import 'server-only'
import { z } from 'zod'
import { endStationShifts } from '../../auth/station-shifts'
import { command } from '../command'
import { Refusal } from '../refusal'

/**
 * Withdraws a tablet for good, at once and while it is in use, or a code that nobody typed yet. What lies on the tablet
 * and was not sent stays there. Where it is not an owner who does it, the owners are told. Refuses: not-found, stale-moved-on.
 */
export const withdrawStation = command({
  name: 'stations.withdraw-station',
  input: z.strictObject({ stationId: z.uuid() }),
  right: 'manage-stations',
  async run({ tx, actor, now, input: { stationId } }) {
    const key = { bakeryId: actor.bakeryId, id: stationId }
    const station = await tx.station.findUnique({ where: { bakeryId_id: key }, select: { name: true } })
    if (!station) throw new Refusal('not-found')
    const { count } = await tx.station.updateMany({
      where: { ...key, withdrawnAt: null },
      data: {
        withdrawnAt: now,
        withdrawnById: actor.personId,
        ownerToldAt: actor.role === 'owner' ? now : null,
      },
    })
    if (count !== 1) throw new Refusal('stale-moved-on')
    await endStationShifts(tx, { bakeryId: actor.bakeryId, stationId }, now)
    await tx.signInPointer.deleteMany({
      where: { bakeryId: actor.bakeryId, targetId: stationId, kind: { in: ['station', 'station_code'] } },
    })
    return { value: null, audit: { target: stationId, before: { name: station.name } } }
  },
})
