import 'server-only'
import type { Db, Tx } from '../../db/client'
import type { Prisma } from '../../db/generated/client'
import { sureOf } from '../sure-of'
import { byTurn, type MixedBatch } from './rules'
import { turnsOf } from './turns-of'

/** What it takes of a trial to say `mixedIn`. */
export const mixedOfTrial = {
  // By arm: what goes into one is read once, not once for each of its doughs.
  arms: {
    select: {
      position: true,
      lines: { select: { ingredient: { select: { id: true, allergens: true, allergensCheckedAt: true } } } },
      batches: {
        select: {
          id: true,
          code: true,
          state: true,
          plannedOrder: true,
          cleanDownBefore: true,
          begunAt: true,
          mixingDay: { select: { number: true } },
        },
      },
    },
  },
  repairs: { where: { kind: 'swap' }, select: { batchId: true, otherBatchId: true }, orderBy: { number: 'asc' } },
} as const satisfies Prisma.TrialSelect

/** The batches of a trial, as `mixedIn` says them. */
export async function mixedBatches(
  from: Db | Tx,
  bakeryId: string,
  trialId: string,
): Promise<ReturnType<typeof mixedIn>> {
  const trial = await from.trial.findUnique({
    where: { bakeryId_id: { bakeryId, id: trialId } },
    select: mixedOfTrial,
  })
  return trial ? mixedIn(trial) : []
}

/**
 * The batches of a trial in their turn, with what each brings: their places, planned and exchanged, whether they were
 * begun, and what their lines may leave in the bowl.
 */
export function mixedIn({
  arms,
  repairs: swaps,
}: Prisma.TrialGetPayload<{ select: typeof mixedOfTrial }>): (MixedBatch & { code: string })[] {
  const turns = turnsOf(
    arms.flatMap(({ batches }) => batches),
    swaps.map(({ batchId, otherBatchId }) => ({
      batchId: sureOf(batchId, 'a dough that was exchanged'),
      otherBatchId: sureOf(otherBatchId, 'the other dough that was exchanged'),
    })),
  )
  const control = arms.find(({ position }) => position === 0)
  const ofControl = new Set(control ? leavesOf(control) : [])
  const mixed = arms.flatMap((arm) => {
    const leaves = leavesOf(arm)
    const adds = leaves.filter((each) => !ofControl.has(each))
    return arm.batches.map(({ mixingDay, ...batch }) => ({
      ...batch,
      turn: turns.get(batch.id) ?? batch.plannedOrder,
      dayNumber: mixingDay.number,
      leaves,
      adds,
    }))
  })
  // In the order of their arms their order would tell what they are.
  return mixed.sort(byTurn)
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
