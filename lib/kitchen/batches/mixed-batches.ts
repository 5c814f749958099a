import 'server-only'
import type { Db, Tx } from '../../db/client'
import type { MixedBatch } from './rules'

/** The batches of a trial with what each brings: their places, whether they were begun, and what their lines may leave in the bowl. */
export async function mixedBatches(
  from: Db | Tx,
  bakeryId: string,
  trialId: string,
): Promise<(MixedBatch & { code: string })[]> {
  const batches = await from.batch.findMany({
    where: { bakeryId, trialId },
    select: {
      id: true,
      code: true,
      state: true,
      plannedOrder: true,
      cleanDownBefore: true,
      begunAt: true,
      mixingDay: { select: { number: true } },
      arm: {
        select: {
          lines: { select: { ingredient: { select: { id: true, allergens: true, allergensCheckedAt: true } } } },
        },
      },
    },
  })
  return batches.map(({ begunAt, mixingDay, arm, ...batch }) => ({
    ...batch,
    begun: begunAt !== null,
    dayNumber: mixingDay.number,
    leaves: [
      ...new Set(
        arm.lines.flatMap(({ ingredient }) =>
          ingredient.allergensCheckedAt ? ingredient.allergens : [...ingredient.allergens, ingredient.id],
        ),
      ),
    ],
  }))
}
