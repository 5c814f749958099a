import 'server-only'
import { z } from 'zod'
import { endBadge } from '../../auth/badges'
import { forgetPinTries } from '../../auth/pin-attempts'
import { endStationShifts } from '../../auth/station-shifts'
import { command } from '../command'
import { Refusal } from '../refusal'
import { mayManage } from './rules'

/**
 * Takes somebody's PIN away, and their badge with it: they are logged off at every tablet, and choose another one at the desk. Nobody else ever
 * chooses or sees it. Refuses: not-found, not-allowed.
 */
export const takePinAway = command({
  name: 'people.take-pin-away',
  input: z.strictObject({ personId: z.uuid() }),
  right: 'manage-people',
  async run({ tx, actor, now, input: { personId } }) {
    const { bakeryId } = actor
    const person = await tx.person.findUnique({
      where: { bakeryId_id: { bakeryId, id: personId } },
      select: { id: true, role: true },
    })
    if (!person) throw new Refusal('not-found')
    if (!mayManage(actor, person)) throw new Refusal('not-allowed')
    // A badge is of no use to whoever has no PIN.
    await endBadge(tx, { bakeryId, personId }, now)
    const { count } = await tx.pin.deleteMany({ where: { bakeryId, personId } })
    await endStationShifts(tx, { bakeryId, personId }, now)
    await forgetPinTries(tx, { bakeryId, personId }, now)
    return { value: null, audit: count === 0 ? null : { target: personId } }
  },
})
