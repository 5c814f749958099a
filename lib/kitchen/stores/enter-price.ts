import 'server-only'
import { v7 as uuid } from 'uuid'
import { command } from '../command'
import { dateOfDay } from '../day-of-date'
import { Refusal } from '../refusal'
import { enterPriceInput } from './enter-price.input'

/**
 * Enters a price from a date on, in the bakery's currency. Prices are only ever added: a mistake is put right by
 * entering the price again for the same date. Refuses: not-found.
 */
export const enterPrice = command({
  name: 'stores.enter-price',
  input: enterPriceInput,
  right: 'edit-stores',
  async run({ tx, actor, now, input }) {
    const { bakeryId } = actor
    const { ingredientId, ...entered } = input
    const ingredient = await tx.ingredient.findUnique({
      where: { bakeryId_id: { bakeryId, id: ingredientId } },
      select: { id: true },
    })
    if (!ingredient) throw new Refusal('not-found')
    const { currency } = await tx.bakery.findUniqueOrThrow({ where: { bakeryId }, select: { currency: true } })
    const priceId = uuid()
    await tx.price.create({
      data: {
        bakeryId,
        id: priceId,
        ingredientId,
        ...entered,
        holdsFrom: dateOfDay(entered.holdsFrom),
        currency,
        enteredById: actor.personId,
        enteredAt: now,
      },
    })
    return {
      value: { priceId },
      audit: { target: ingredientId, after: { priceId, ...entered, currency } },
    }
  },
})
