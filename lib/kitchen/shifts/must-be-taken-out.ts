import 'server-only'
import type { Tx } from '../../db/client'
import type { OutState } from '../conduct/out-state.input'
import { whyNotTakenOut } from '../conduct/why-not-taken-out'
import { firstDecidingReading } from '../readings/first-deciding-reading'
import { Refusal } from '../refusal'

type Locked = { id: string; trialId: string; begunAt: Date | null; trial: { measureId: string } }

/** Refuses to take a locked batch out where that is not allowed: not-begun-not-lost, begun-so-baked, read-before-any-cause. */
export async function mustBeTakenOut(
  tx: Tx,
  bakeryId: string,
  { id, trialId, begunAt, trial }: Locked,
  to: OutState,
): Promise<void> {
  const firstReadAt = await firstDecidingReading(tx, bakeryId, { id, trialId, primaryId: trial.measureId })
  const causes = await tx.batchCause.findMany({ where: { bakeryId, trialId, batchId: id }, select: { at: true } })
  const fault = whyNotTakenOut({ to, begunAt, firstReadAt, causesNotedAt: causes.map(({ at }) => at) })
  if (fault) throw new Refusal(fault)
}
