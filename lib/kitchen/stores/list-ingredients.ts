import 'server-only'
import { z } from 'zod'
import { levelOf } from '../../auth/rights'
import type { Db } from '../../db/client'
import { IngredientKind } from '../../db/generated/enums'
import { after } from '../after.input'
import { dayInZone } from '../day-in-zone'
import { keyParts } from '../page-cursor'
import { query } from '../query'
import { readPage } from '../read-page'
import { priceOn } from './price-on'
import { compositionState } from './rules'

/** In the database's order, which no comparison of its client tells. */
const kinds = Object.values(IngredientKind)
/** So many are named where something is to be minded; the others are counted. */
const mostNamed = 12

/**
 * The ingredients of the stores, those in use and those not, a page of each; and what is missing of all that are in use.
 * Prices of today, per kg, only for those who see costs.
 */
export const listIngredients = query({
  name: 'stores.list-ingredients',
  input: z.strictObject({ after }),
  right: 'read-work',
  async run({ db, actor, now, input }) {
    const { bakeryId } = actor
    const used = { bakeryId, endedAt: null }
    const unchecked = { ...used, allergensCheckedAt: null }
    const pageOf = async (list: string, where: { bakeryId: string; endedAt: null | { not: null } }) => {
      const page = await readPage({
        bakeryId,
        list: `ingredients.${list}`,
        after: input.after,
        count: () => db.ingredient.count({ where }),
        key: z.tuple([z.enum(kinds), keyParts.text, keyParts.id]),
        read: (beyond, take) =>
          db.ingredient.findMany({
            where: { ...where, ...(beyond && beyondInOrder(beyond)) },
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
            orderBy: [{ kind: 'asc' }, { name: 'asc' }, { id: 'asc' }],
            take,
          }),
        keyOf: ({ kind, name, id }) => [kind, name, id],
      })
      return { ...page, rows: page.rows.map((row) => ({ ...row, composition: compositionState(row.figures) })) }
    }
    const [inUse, ended, uncheckedCount, uncheckedFirst, unknownCount] = await Promise.all([
      pageOf('in-use', used),
      pageOf('ended', { bakeryId, endedAt: { not: null } }),
      db.ingredient.count({ where: unchecked }),
      db.ingredient.findMany({
        where: unchecked,
        select: { name: true },
        orderBy: [{ kind: 'asc' }, { name: 'asc' }],
        take: mostNamed,
      }),
      db.ingredient.count({ where: { ...used, figures: { none: {} } } }),
    ])
    const ids = [...inUse.rows, ...ended.rows].map(({ id }) => id)
    const costs = levelOf(actor, 'see-costs') === 'yes' ? await costsOf(db, bakeryId, ids, now) : undefined
    return {
      inUse,
      ended,
      unchecked: { count: uncheckedCount, names: uncheckedFirst.map(({ name }) => name) },
      unknownCompositionCount: unknownCount,
      mayEdit: levelOf(actor, 'edit-stores') === 'yes',
      ...(costs && { costs }),
    }
  },
})

/** The prices of some ingredients today, and how many of all that are in use have none. */
async function costsOf(db: Db, bakeryId: string, ids: readonly string[], now: Date) {
  const { timeZone } = await db.bakery.findUniqueOrThrow({ where: { bakeryId }, select: { timeZone: true } })
  const today = dayInZone(now, timeZone)
  const [held, unpricedCount] = await Promise.all([
    priceOn(db, bakeryId, ids, today),
    db.ingredient.count({
      where: { bakeryId, endedAt: null, prices: { none: { holdsFrom: { lte: new Date(today) } } } },
    }),
  ])
  const prices = new Map(
    [...held].map(([id, { perKg, currency, holdsFrom }]) => [id, { perKg: perKg.toFixed(), currency, holdsFrom }]),
  )
  return { today, prices, unpricedCount }
}

/** Of a later kind, or of this kind with a later name. */
function beyondInOrder([kind, name, id]: readonly [IngredientKind, string, string]) {
  return {
    OR: [
      { kind: { in: kinds.slice(kinds.indexOf(kind) + 1) } },
      { kind, name: { gt: name } },
      { kind, name, id: { gt: id } },
    ],
  }
}
