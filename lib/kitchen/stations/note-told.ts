import 'server-only'
import { z } from 'zod'
import { command } from '../command'
import { Refusal } from '../refusal'

/** An owner says that they know what somebody else did with a tablet. Narrowed to owners. Refuses: not-allowed, not-found. */
export const noteTold = command({
  name: 'stations.note-told',
  input: z.strictObject({ stationId: z.uuid() }),
  right: 'manage-stations',
  async run({ tx, actor, now, input: { stationId } }) {
    if (actor.role !== 'owner') throw new Refusal('not-allowed')
    const key = { bakeryId: actor.bakeryId, id: stationId }
    const station = await tx.station.findUnique({
      where: { bakeryId_id: key },
      select: { name: true, ownerToldAt: true },
    })
    if (!station) throw new Refusal('not-found')
    if (station.ownerToldAt !== null) return { value: null, audit: null }
    await tx.station.update({ where: { bakeryId_id: key }, data: { ownerToldAt: now } })
    return { value: null, audit: { target: stationId } }
  },
})
