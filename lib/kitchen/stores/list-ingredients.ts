import 'server-only'
import { z } from 'zod'
import { levelOf } from '../../auth/rights'
import { dayInZone } from '../day-in-zone'
import { query } from '../query'
import { priceOn } from './price-on'
import { compositionState } from './rules'

/** The ingredients of the stores, in use or not. Prices of today, per kg, only for those who see costs. */
export const listIngredients = query({
  name: 'stores.list-ingredients',
  input: z.strictObject({}),
  right: 'read-work',
  async run({ db, actor, now }) {
    const { bakeryId } = actor
    const rows = await db.ingredient.findMany({
      where: { bakeryId },
      select: {
        id: true,
        name: true,
        kind: true,
        labelName: true,
        allergens: true,
        allergensCheckedAt: true,
        dustCaution: true,
        endedAt: true,
        figures: { select: { figure: true, gPer100G: true } },
      },
      orderBy: [{ kind: 'asc' }, { name: 'asc' }],
    })
    const ingredients = rows.map((row) => ({ ...row, composition: compositionState(row.figures) }))
    const mayEdit = levelOf(actor.role, 'edit-stores') === 'yes'
    if (levelOf(actor.role, 'see-costs') !== 'yes') return { ingredients, mayEdit }
    const { timeZone } = await db.bakery.findUniqueOrThrow({ where: { bakeryId }, select: { timeZone: true } })
    const today = dayInZone(now, timeZone)
    const ids = ingredients.map(({ id }) => id)
    const held = await priceOn(db, bakeryId, ids, today)
    const prices = new Map([...held].map(([id, { perKg, currency, holdsFrom }]) => [id, { perKg: perKg.toFixed(), currency, holdsFrom }]))
    return { ingredients, mayEdit, costs: { today, prices } }
  },
})
