import 'server-only'
import type { Tx } from '../../db/client'
import { isOpen } from '../trials/rules'
import { isSameWhereabouts, stateBySteps } from './state-by-steps.input'
import type { StepRow } from './step-facts'

/** Brings doughs to where their steps say they are, once new ones are written; their rows are locked by `lockBatches`. */
export async function followSteps(tx: Tx, rows: readonly StepRow[]): Promise<void> {
  const bakeryId = rows[0]?.bakeryId
  if (bakeryId === undefined) return
  const doughs = await tx.batch.findMany({
    where: { bakeryId, id: { in: [...new Set(rows.map(({ batchId }) => batchId))] } },
    select: {
      id: true,
      state: true,
      bakedAt: true,
      trial: { select: { state: true } },
      steps: { select: { id: true, step: true, isDone: true, supersedesId: true, at: true } },
    },
  })
  for (const { id, trial, steps, ...now } of doughs) {
    const then = stateBySteps(now, steps)
    if (!isOpen(trial.state) || isSameWhereabouts(now, then)) continue
    await tx.batch.update({
      where: { bakeryId_id: { bakeryId, id } },
      data: { ...then, revision: { increment: 1 } },
    })
  }
}
