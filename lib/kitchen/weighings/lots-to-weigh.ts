import 'server-only'
import { groupBy } from '../../calc/group-by'
import type { Db } from '../../db/client'
import { readPlan } from '../../documents/plan/read-plan'
import { dayOfDate } from '../day-of-date'
import { isToConfirm } from '../stores/is-to-confirm'
import { areAllergensSaid, isPastBestBefore } from '../stores/rules'
import { linesOfPlan } from './lines-of-plan'

/** A lot that something may be weighed from. */
export type LotToWeigh = {
  id: string
  code: string
  isPast: boolean
  /** Said at the bench, and nobody has compared it with the stores yet. */
  isToConfirm: boolean
}

/** So many of an ingredient are offered, the latest deliveries; of more a bakery has not ended those that are used up. */
const most = 12
/** Beside them those that were said at the bench: so many of all that a plan needs, and of one of them. Slips push no lot out. */
const [mostSaid, mostSaidOfOne] = [100, 4]

/**
 * The lots that the ingredients of a plan may be weighed from, by the ingredient, the latest delivery first: those that nobody has
 * ended, those that are to be confirmed last; none where nothing is said of the allergens. They are of the stores alone, so they tell nothing of a dough.
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
  const ids = [...new Set(linesOfPlan(read.plan).map(({ ingredient }) => ingredient.id))]
  const [ingredients, said] = await Promise.all([
    db.ingredient.findMany({
      where: { bakeryId, id: { in: ids } },
      select: {
        id: true,
        allergens: true,
        allergensCheckedAt: true,
        lots: {
          where: { endedAt: null, NOT: isToConfirm },
          select: { id: true, code: true, bestBefore: true },
          orderBy: [{ receivedOn: 'desc' }, { id: 'desc' }],
          take: most,
        },
      },
    }),
    db.lot.findMany({
      where: { bakeryId, ingredientId: { in: ids }, ...isToConfirm },
      select: { id: true, code: true, ingredientId: true },
      orderBy: [{ enteredAt: 'desc' }, { id: 'desc' }],
      take: mostSaid,
    }),
  ])
  const saidOf = groupBy(said, ({ ingredientId }) => ingredientId)
  return new Map(
    ingredients.filter(areAllergensSaid).map(({ id, lots }) => [
      id,
      [
        ...lots.map(({ bestBefore, ...lot }) => ({
          ...lot,
          isPast: isPastBestBefore(dayOfDate(bestBefore), today),
          isToConfirm: false,
        })),
        ...(saidOf.get(id) ?? [])
          .slice(0, mostSaidOfOne)
          .map((lot) => ({ id: lot.id, code: lot.code, isPast: false, isToConfirm: true })),
      ],
    ]),
  )
}
