import 'server-only'
import { command } from '../command'
import { Refusal } from '../refusal'
import { staleRefusal } from '../stale'
import { matchLotInput } from './confirm-lot.input'
import { isToConfirm } from './is-to-confirm'
import { lotToConfirm } from './lot-to-confirm'

/**
 * Says that a lot of the bench is another one that is there: its code was typed wrongly. It is ended, what was weighed of
 * it keeps naming it as it was said, and both codes are shown. Refuses: not-found, stale; at a field:
 * lot-to-confirm-only, lot-not-another.
 */
export const matchLot = command({
  name: 'stores.match-lot',
  input: matchLotInput,
  right: 'edit-stores',
  async run({ tx, actor, now, input: { lotId, sameAsId } }) {
    const { bakeryId, personId } = actor
    const { code, ingredientId, ingredient, photos } = await lotToConfirm(tx, bakeryId, lotId)
    // What it is stays in the stores meanwhile: nobody ends it, and nobody finds it to be this one.
    const [other] = await tx.$queryRaw<{ code: string }[]>`
      SELECT code FROM lot
      WHERE bakery_id = ${bakeryId}::uuid AND id = ${sameAsId}::uuid AND ingredient_id = ${ingredientId}::uuid
        AND ended_at IS NULL AND (said_with_id IS NULL OR confirmed_at IS NOT NULL)
      FOR NO KEY UPDATE`
    if (!other || sameAsId.toLowerCase() === lotId.toLowerCase()) throw Refusal.at('sameAsId', 'lot-not-another')
    const { count } = await tx.lot.updateMany({
      where: { bakeryId, id: lotId, ...isToConfirm },
      data: { endedWhy: 'other_lot', endedById: personId, endedAt: now, sameAsId: sameAsId.toLowerCase() },
    })
    if (count !== 1) throw await staleRefusal(tx, actor, lotId)
    return { value: null, audit: { target: lotId, after: { ingredient, code, is: other.code, lot: sameAsId, photos } } }
  },
})
