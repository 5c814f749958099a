import 'server-only'
import { z } from 'zod'
import { levelOf } from '../../auth/rights'
import type { Db } from '../../db/client'
import { dayInZone } from '../day-in-zone'
import { query } from '../query'
import { Refusal } from '../refusal'
import { figure } from './ingredient-facts.input'
import { pricePerKg } from './price-per-kg'
import { figureDoubts, isUnsafeRaw, isUsuallyDusty, priceStates } from './rules'
import { ingredientFacts } from './ingredient-facts'
import { usualCounts } from './usual-counts'

/** One ingredient with its composition; its prices only for those who see costs. Refuses: not-found. */
export const getIngredient = query({
  name: 'stores.get-ingredient',
  input: z.strictObject({ ingredientId: z.uuid() }),
  right: 'read-work',
  async run({ db, actor, now, input }) {
    const { bakeryId } = actor
    const found = await db.ingredient.findUnique({
      where: { bakeryId_id: { bakeryId, id: input.ingredientId } },
      select: {
        id: true,
        ...ingredientFacts,
        revision: true,
        createdAt: true,
        figures: { select: { figure: true, gPer100G: true, source: true } },
      },
    })
    if (!found) throw new Refusal('not-found')
    const figures = figure.options.flatMap((each) => found.figures.filter((row) => row.figure === each))
    return {
      ...found,
      figures,
      doubts: figureDoubts(Object.fromEntries(figures.map((row) => [row.figure, row.gPer100G]))),
      isUsuallyDusty: isUsuallyDusty(found.kind),
      isUnsafeRaw: isUnsafeRaw(found.kind),
      counted: found.countsAsUsual ? [...usualCounts[found.kind]] : found.counts,
      mayEdit: levelOf(actor, 'edit-stores') === 'yes',
      ...(levelOf(actor, 'see-costs') === 'yes' ? { costs: await readCosts(db, bakeryId, found.id, now) } : {}),
    }
  },
})

/** The newest entries; more than these no page needs, and each stays in the record. */
const mostEntries = 200

async function readCosts(db: Db, bakeryId: string, ingredientId: string, now: Date) {
  const { timeZone, currency } = await db.bakery.findUniqueOrThrow({
    where: { bakeryId },
    select: { timeZone: true, currency: true },
  })
  const today = dayInZone(now, timeZone)
  const rows = await db.price.findMany({
    where: { bakeryId, ingredientId },
    select: {
      id: true,
      holdsFrom: true,
      packMassG: true,
      packPrice: true,
      currency: true,
      supplier: true,
      enteredAt: true,
      enteredBy: { select: { name: true } },
    },
    orderBy: [{ holdsFrom: 'desc' }, { enteredAt: 'desc' }, { id: 'desc' }],
    take: mostEntries,
  })
  const entries = rows.map((row) => ({
    ...row,
    // A date column comes as midnight UTC.
    holdsFrom: row.holdsFrom.toISOString().slice(0, 10),
    packPrice: row.packPrice.toFixed(),
    perKg: pricePerKg(row).toFixed(),
    enteredBy: row.enteredBy.name,
  }))
  return { today, currency, entries: priceStates(entries, today) }
}
