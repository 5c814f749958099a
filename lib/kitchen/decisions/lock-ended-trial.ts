import 'server-only'
import type { DeskActor } from '../../auth/actor'
import type { Tx } from '../../db/client'
import { Refusal } from '../refusal'
import { staleRefusal } from '../stale'
import { lockTrial } from '../trials/lock-trial'
import { isEnded } from '../trials/rules'

/**
 * Holds a trial on which somebody decides: ended, as it was seen, and not decided yet.
 * @throws Refusal 'not-found' | 'trial-not-ended' | 'already-decided', who did | 'stale'
 */
export async function lockEndedTrial(tx: Tx, actor: DeskActor, trialId: string, seenRevision: number) {
  const { bakeryId } = actor
  const trial = await lockTrial(tx, bakeryId, trialId)
  if (!isEnded(trial.state)) throw new Refusal('trial-not-ended')
  const standing = await tx.decision.findFirst({
    where: { bakeryId, trialId, takenBackAt: null },
    select: { number: true, decidedBy: { select: { name: true } } },
  })
  if (standing) throw new Refusal('already-decided', { who: standing.decidedBy.name, number: standing.number })
  if (trial.revision !== seenRevision) throw await staleRefusal(tx, actor, trialId)
  return trial
}
