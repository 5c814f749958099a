import 'server-only'
import { v7 as uuid } from 'uuid'
import { command } from '../command'
import { dayInZone } from '../day-in-zone'
import { dateOfDay } from '../day-of-date'
import { Refusal } from '../refusal'
import { receiveLotInput } from './receive-lot.input'

/**
 * Writes down a lot that came in. Its facts stay as they are; one that is wrong is ended and written anew. An ingredient
 * of whose allergens nothing is said may have lots, but none of them goes into a dough. Refuses: not-found, invalid with
 * 'received-in-future', 'before-received' or 'lot-code-taken' at its field.
 */
export const receiveLot = command({
  name: 'stores.receive-lot',
  input: receiveLotInput,
  right: 'edit-stores',
  async run({ tx, actor, now, input }) {
    const { bakeryId } = actor
    const { ingredientId, code, receivedOn, bestBefore, strength, note } = input
    const ingredient = await tx.ingredient.findUnique({
      where: { bakeryId_id: { bakeryId, id: ingredientId } },
      select: { name: true },
    })
    if (!ingredient) throw new Refusal('not-found')
    const { timeZone } = await tx.bakery.findUniqueOrThrow({ where: { bakeryId }, select: { timeZone: true } })
    if (receivedOn > dayInZone(now, timeZone)) throw Refusal.at('receivedOn', 'received-in-future')
    const lotId = uuid()
    await tx.lot.create({
      data: {
        bakeryId,
        id: lotId,
        ingredientId,
        code,
        receivedOn: dateOfDay(receivedOn),
        bestBefore: bestBefore === null ? null : dateOfDay(bestBefore),
        strengthOf: strength?.of ?? null,
        strength: strength?.value ?? null,
        strengthUnit: strength?.unit ?? null,
        note,
        enteredById: actor.personId,
        enteredAt: now,
      },
    })
    return {
      value: { lotId },
      audit: { target: lotId, after: { ingredient: ingredient.name, code, receivedOn, bestBefore, strength, note } },
    }
  },
})
