import 'server-only'
import { v7 as uuid } from 'uuid'
import { command } from '../command'
import { analyseToFreeze, freezeEvidence } from './freeze-evidence'
import { keepFormulaInput } from './keep-formula.input'
import { lockEndedTrial } from './lock-ended-trial'
import { nextDecisionNumber } from './next-number'

/**
 * Decides that an ended trial changes nothing: the reason and the evidence are kept, the formula stays as it is.
 * Refuses: not-found, trial-not-ended, already-decided, stale, took-too-long, not-worked-out.
 */
export const keepFormula = command({
  name: 'decisions.keep-formula',
  input: keepFormulaInput,
  right: 'sign-off-formula',
  prepare: ({ actor, input }) => analyseToFreeze(actor.bakeryId, input.trialId),
  async run({ tx, actor, now, input, prepared }) {
    const { bakeryId, personId } = actor
    const { trialId, reason } = input
    const trial = await lockEndedTrial(tx, actor, trialId, input.seenRevision)
    const { evidenceId, hash, evidence } = await freezeEvidence(tx, actor, trialId, now, prepared)
    const decisionId = uuid()
    const number = await nextDecisionNumber(tx, bakeryId)
    await tx.decision.create({
      data: {
        bakeryId,
        id: decisionId,
        number,
        trialId,
        outcome: 'keep',
        evidenceId,
        reason,
        decidedById: personId,
        at: now,
        revision: 1,
      },
    })
    return {
      value: { decisionId },
      audit: {
        target: decisionId,
        after: {
          decision: number,
          trial: trial.number,
          formula: evidence.trial.formula.name,
          kept: true,
          evidence: hash,
        },
        reason,
      },
    }
  },
})
