import 'server-only'
import { command } from '../command'
import { discardVersion } from '../formulas/discard-version'
import { lockFormulaOfVersion } from '../formulas/lock-formula'
import { Refusal } from '../refusal'
import { staleRefusal } from '../stale'
import { lockTrial } from '../trials/lock-trial'
import { takeBackInput } from './take-back.input'

/**
 * Takes a decision back, for a reason, as long as its version is not signed off; signatures given on the way stay in
 * the history. Its draft is discarded, and somebody may decide on the trial anew. Refuses: not-found, signed, stale.
 */
export const takeBack = command({
  name: 'decisions.take-back',
  input: takeBackInput,
  right: 'sign-off-formula',
  async run({ tx, actor, now, input: { decisionId, seenRevision, reason } }) {
    const { bakeryId } = actor
    const key = { bakeryId, id: decisionId }
    const decision = await tx.decision.findUnique({
      where: { bakeryId_id: key },
      select: { number: true, trialId: true, versionId: true },
    })
    if (!decision) throw new Refusal('not-found')
    await lockTrial(tx, bakeryId, decision.trialId)
    if (decision.versionId !== null) {
      await lockFormulaOfVersion(tx, bakeryId, decision.versionId)
      const version = await tx.formulaVersion.findUniqueOrThrow({
        where: { bakeryId_id: { bakeryId, id: decision.versionId } },
        select: { bakeryId: true, id: true, revision: true, signedAt: true },
      })
      if (version.signedAt) throw new Refusal('signed')
      if (!(await discardVersion(tx, version, now))) throw await staleRefusal(tx, actor, decisionId)
    }
    const { count } = await tx.decision.updateMany({
      where: { ...key, revision: seenRevision, takenBackAt: null },
      data: { takenBackAt: now, takenBackById: actor.personId, takenBackWhy: reason, revision: { increment: 1 } },
    })
    if (count !== 1) throw await staleRefusal(tx, actor, decisionId)
    return {
      value: { trialId: decision.trialId },
      audit: {
        target: decisionId,
        before: 'stands',
        after: { decision: decision.number, state: 'taken back' },
        reason,
      },
    }
  },
})
