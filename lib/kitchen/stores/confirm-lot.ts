import 'server-only'
import { command } from '../command'
import { dayInZone } from '../day-in-zone'
import { dateOfDay } from '../day-of-date'
import { Refusal } from '../refusal'
import { staleRefusal } from '../stale'
import { confirmLotInput } from './confirm-lot.input'
import { isToConfirm } from './is-to-confirm'
import { lotToConfirm } from './lot-to-confirm'

/**
 * Confirms a lot that was said at the bench, once, with the days that its label says; who said so stays with it. Refuses:
 * not-found, stale; at a field: lot-to-confirm-only, received-in-future, before-received.
 */
export const confirmLot = command({
  name: 'stores.confirm-lot',
  input: confirmLotInput,
  right: 'edit-stores',
  async run({ tx, actor, now, input: { lotId, receivedOn, bestBefore } }) {
    const { bakeryId, personId } = actor
    const { code, ingredient, photos } = await lotToConfirm(tx, bakeryId, lotId)
    const { timeZone } = await tx.bakery.findUniqueOrThrow({ where: { bakeryId }, select: { timeZone: true } })
    if (receivedOn > dayInZone(now, timeZone)) throw Refusal.at('receivedOn', 'received-in-future')
    const { count } = await tx.lot.updateMany({
      where: { bakeryId, id: lotId, ...isToConfirm },
      data: {
        receivedOn: dateOfDay(receivedOn),
        bestBefore: bestBefore === null ? null : dateOfDay(bestBefore),
        confirmedById: personId,
        confirmedAt: now,
      },
    })
    if (count !== 1) throw await staleRefusal(tx, actor, lotId)
    return { value: null, audit: { target: lotId, after: { ingredient, code, receivedOn, bestBefore, photos } } }
  },
})
