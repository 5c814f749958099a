import 'server-only'
import { z } from 'zod'
import { command } from '../command'

/** Ends the shift of whoever is on a tablet, there alone: their PIN is asked again. With nobody on it nothing is done. */
export const logOff = command({
  name: 'stations.log-off',
  input: z.strictObject({}),
  right: 'hold-station',
  endsOwnSession: true,
  async run({ tx, actor, now }) {
    if (actor.personId === null) return { value: null, audit: null }
    await tx.stationShift.updateMany({
      where: { bakeryId: actor.bakeryId, id: actor.shiftId, endedAt: null },
      data: { endedAt: now },
    })
    return { value: null, audit: { target: actor.personId } }
  },
})
