import 'server-only'
import { command } from '../command'
import { Refusal } from '../refusal'
import { staleRefusal } from '../stale'
import { endLotInput } from './end-lot.input'

/**
 * Ends a lot, once: nobody is offered it any more, and its code may be received again. What was weighed of it keeps
 * naming it. Refuses: not-found, stale.
 */
export const endLot = command({
  name: 'stores.end-lot',
  input: endLotInput,
  right: 'edit-stores',
  async run({ tx, actor, now, input: { lotId, why } }) {
    const key = { bakeryId: actor.bakeryId, id: lotId }
    const lot = await tx.lot.findUnique({
      where: { bakeryId_id: key },
      select: { code: true, ingredient: { select: { name: true } } },
    })
    if (!lot) throw new Refusal('not-found')
    const { count } = await tx.lot.updateMany({
      where: { ...key, endedAt: null },
      data: { endedWhy: why, endedById: actor.personId, endedAt: now },
    })
    if (count !== 1) throw await staleRefusal(tx, actor, lotId)
    return { value: null, audit: { target: lotId, after: { ingredient: lot.ingredient.name, code: lot.code, why } } }
  },
})
