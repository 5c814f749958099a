import 'server-only'
import { hashSecret } from '../../auth/secret'
import { latestMoment } from '../../auth/session-life'
import { command } from '../command'
import { Refusal } from '../refusal'
import { goOnInput } from './go-on.input'

/**
 * Goes on as somebody who gave their PIN at this tablet and whose time there is not over, without asking it again: one
 * tap on the name. Nothing of it is in the record: what they then do is.
 * Refuses: pin-again.
 */
export const goOn = command({
  name: 'stations.go-on',
  input: goOnInput,
  right: 'hold-station',
  isSecret: true,
  async run({ tx, actor, now, input: { shiftToken } }) {
    const { bakeryId, stationId } = actor
    const pointer = await tx.signInPointer.findFirst({
      where: { bakeryId, hash: hashSecret('station-shift', shiftToken), kind: 'station_shift' },
      select: { targetId: true },
    })
    if (!pointer) throw new Refusal('pin-again')
    const open = {
      bakeryId,
      id: pointer.targetId,
      stationId,
      endedAt: null,
      beganAt: { lte: now },
      endsAt: { gt: now },
      lastSeenAt: { lte: latestMoment() },
      person: { endedAt: null },
    }
    const shift = await tx.stationShift.findFirst({
      where: open,
      select: { endsAt: true, person: { select: { id: true, name: true, role: true } } },
    })
    const { count } = await tx.stationShift.updateMany({ where: open, data: { lastSeenAt: now } })
    if (!shift || count !== 1) throw new Refusal('pin-again')
    return { value: { person: shift.person, endsAt: shift.endsAt.toISOString() }, audit: null }
  },
})
