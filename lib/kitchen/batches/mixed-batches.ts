import 'server-only'
import type { Db, Tx } from '../../db/client'
import { sureOf } from '../sure-of'
import type { MixedBatch } from './rules'
import { turnsOf } from './turns-of'

/** The batches of a trial with what each brings: their places, planned and exchanged, whether they were begun, and what their lines may leave in the bowl. */
export async function mixedBatches(
  from: Db | Tx,
  bakeryId: string,
  trialId: string,
): Promise<(MixedBatch & { code: string })[]> {
  const trial = await from.trial.findUnique({
    where: { bakeryId_id: { bakeryId, id: trialId } },
    select: {
      batches: {
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
              position: true,
              lines: { select: { ingredient: { select: { id: true, allergens: true, allergensCheckedAt: true } } } },
            },
          },
        },
      },
      repairs: { where: { kind: 'swap' }, select: { batchId: true, otherBatchId: true }, orderBy: { number: 'asc' } },
    },
  })
  if (!trial) return []
  const { batches, repairs: swaps } = trial
  const turns = turnsOf(
    batches,
    swaps.map(({ batchId, otherBatchId }) => ({
      batchId: sureOf(batchId, 'a dough that was exchanged'),
      otherBatchId: sureOf(otherBatchId, 'the other dough that was exchanged'),
    })),
  )
  const control = batches.find(({ arm }) => arm.position === 0)
  const ofControl = new Set(control ? leavesOf(control.arm) : [])
  return batches.map(({ mixingDay, arm, ...batch }) => {
    const leaves = leavesOf(arm)
    return {
      ...batch,
      turn: turns.get(batch.id) ?? batch.plannedOrder,
      dayNumber: mixingDay.number,
      leaves,
      adds: leaves.filter((each) => !ofControl.has(each)),
    }
  })
}

type Mixed = { lines: { ingredient: { id: string; allergens: string[]; allergensCheckedAt: Date | null } }[] }

function leavesOf({ lines }: Mixed): string[] {
  return [
    ...new Set(
      lines.flatMap(({ ingredient }) =>
        ingredient.allergensCheckedAt ? ingredient.allergens : [...ingredient.allergens, ingredient.id],
      ),
    ),
  ]
}
