import 'server-only'
import type { Db } from '../../db/client'
import { readPlan } from '../../documents/plan/read-plan'
import { dayOfDate } from '../day-of-date'
import { areAllergensSaid, isPastBestBefore } from '../stores/rules'
import { linesOfPlan } from './lines-of-plan'

/** A lot that something may be weighed from. */
export type LotToWeigh = { id: string; code: string; isPast: boolean }

/** So many of an ingredient are offered, the latest deliveries; of more a bakery has not ended those that are used up. */
const most = 12

/**
 * The lots that the ingredients of a plan may be weighed from, by the ingredient, the latest delivery first: those that nobody has
 * ended, and none where nothing is said of the allergens. They are of the stores alone, so they tell nothing of a dough.
 */
export async function lotsToWeigh(
  db: Db,
  bakeryId: string,
  plan: { planText: string | null; planHash: string | null },
  today: string,
): Promise<Map<string, LotToWeigh[]>> {
  const { planText, planHash } = plan
  const read = planText === null || planHash === null ? null : readPlan(planText, planHash)
  if (read?.outcome !== 'read') return new Map()
  const ingredientIds = new Set(linesOfPlan(read.plan).map(({ ingredient }) => ingredient.id))
  const ingredients = await db.ingredient.findMany({
    where: { bakeryId, id: { in: [...ingredientIds] } },
    select: {
      id: true,
      allergens: true,
      allergensCheckedAt: true,
      lots: {
        where: { endedAt: null },
        select: { id: true, code: true, bestBefore: true },
        orderBy: [{ receivedOn: 'desc' }, { id: 'desc' }],
        take: most,
      },
    },
  })
  return new Map(
    ingredients
      .filter(areAllergensSaid)
      .map(({ id, lots }) => [
        id,
        lots.map(({ bestBefore, ...lot }) => ({ ...lot, isPast: isPastBestBefore(dayOfDate(bestBefore), today) })),
      ]),
  )
}
