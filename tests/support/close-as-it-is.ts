import { db } from '../../lib/db/client'
import { sealTrial } from '../../lib/kitchen/results/seal-trial'
import type { TestBakery } from './bakery'

/** Closes the readings of a trial that was planted, whatever of it is missing, and seals them as the real command does. */
export async function closeAsItIs(
  { bakeryId, head }: TestBakery,
  trialId: string,
  at: Date,
  state: 'closed' | 'stopped' = 'closed',
  why: string | null = null,
): Promise<void> {
  await db().$transaction(async (tx) => {
    await tx.trial.update({
      where: { bakeryId_id: { bakeryId, id: trialId } },
      data: { state, closedAt: at, closedWhy: why },
    })
    await sealTrial(tx, { bakeryId, personId: head.personId, name: head.name }, trialId, { at, state, why })
  })
}
