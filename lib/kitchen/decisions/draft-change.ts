import 'server-only'
import { v7 as uuid } from 'uuid'
import type { Tx } from '../../db/client'
import { command } from '../command'
import { addDraft } from '../formulas/add-draft'
import { lockFormulaOfVersion } from '../formulas/lock-formula'
import { readVersion } from '../formulas/read-version'
import { Refusal } from '../refusal'
import { draftChangeInput } from './draft-change.input'
import { analyseToFreeze, freezeEvidence } from './freeze-evidence'
import { lockEndedTrial } from './lock-ended-trial'
import { nextDecisionNumber } from './next-number'
import { stagesOfArm } from './rules'

/**
 * Decides that a formula becomes what an arm of an ended trial was: freezes the evidence, and drafts the next version
 * out of the control's with the arm's lines as they were planned. It is in production when it is signed off.
 * Refuses: not-found, trial-not-ended, already-decided, stale, took-too-long, not-worked-out; at the arm wrong-choice, control-is-no-change,
 * arm-not-measured and arm-ingredient-ended.
 */
export const draftChange = command({
  name: 'decisions.draft-change',
  input: draftChangeInput,
  right: 'draft-formula',
  prepare: ({ actor, input }) => analyseToFreeze(actor.bakeryId, input.trialId),
  async run({ tx, actor, now, input, prepared }) {
    const { bakeryId, personId } = actor
    const { trialId, armId, reason } = input
    const trial = await lockEndedTrial(tx, actor, trialId, input.seenRevision)
    const arm = await armOrRefuse(tx, bakeryId, trialId, armId)
    const formulaId = await lockFormulaOfVersion(tx, bakeryId, trial.controlVersionId)
    const from = await readVersion(tx, bakeryId, trial.controlVersionId)
    if (!from) throw new Refusal('not-found')
    const { evidenceId, hash, evidence } = await freezeEvidence(tx, actor, trialId, now, prepared)
    const baked = evidence.arms.find(({ id }) => id === armId)
    if (!baked || baked.batches === 0) throw Refusal.at('armId', 'arm-not-measured')

    const stages = await tx.formulaStage.findMany({
      where: { bakeryId, versionId: from.id },
      select: { id: true, kind: true, name: true },
      orderBy: { position: 'asc' },
    })
    const lines = arm.lines.map(({ ingredient, ...line }) => ({ ...line, kind: ingredient.kind }))
    const { versionId, number: versionNumber } = await addDraft(tx, {
      from,
      reason,
      stages: stagesOfArm(stages, lines),
      draftedById: personId,
      now,
    })
    const decisionId = uuid()
    const number = await nextDecisionNumber(tx, bakeryId)
    await tx.decision.create({
      data: {
        bakeryId,
        id: decisionId,
        number,
        trialId,
        outcome: 'change',
        armId,
        versionId,
        evidenceId,
        reason,
        decidedById: personId,
        at: now,
        revision: 1,
      },
    })
    return {
      value: { decisionId, formulaId, versionId },
      audit: {
        target: decisionId,
        after: {
          decision: number,
          trial: trial.number,
          arm: arm.name,
          formula: from.formula.name,
          version: versionNumber,
          from: from.number,
          evidence: hash,
        },
        reason,
      },
    }
  },
})

/** An arm of the trial that is not its control, of which every ingredient is still in use. */
async function armOrRefuse(tx: Tx, bakeryId: string, trialId: string, armId: string) {
  const arm = await tx.arm.findFirst({
    where: { bakeryId, trialId, id: armId },
    select: {
      position: true,
      name: true,
      lines: {
        select: {
          stageId: true,
          ingredientId: true,
          massG: true,
          controlMassG: true,
          ingredient: { select: { name: true, kind: true, endedAt: true } },
        },
        orderBy: { position: 'asc' },
      },
    },
  })
  if (!arm) throw Refusal.at('armId', 'wrong-choice')
  if (arm.position === 0) throw Refusal.at('armId', 'control-is-no-change')
  const ended = arm.lines.filter(({ massG, ingredient }) => massG > 0 && ingredient.endedAt !== null)
  if (ended.length > 0)
    throw Refusal.at('armId', 'arm-ingredient-ended', {
      names: [...new Set(ended.map(({ ingredient }) => ingredient.name))],
    })
  return arm
}
