import 'server-only'
import { v7 as uuid } from 'uuid'
import type { Actor } from '../../auth/actor'
import type { Tx } from '../../db/client'
import { textOfEvidence, type Evidence } from '../../documents/evidence/text-of-evidence'
import { dayInZone } from '../day-in-zone'
import { analyseTrial } from '../evidence/analyse-trial'
import { costsOfTrial } from '../evidence/costs-of-trial'
import { loadEvidence } from '../evidence/load-evidence'
import { sealOfReadings } from '../evidence/seal-of-readings'

/** Works out what an ended trial shows at this moment and keeps it, never to be worked out again. The trial is held already. */
export async function freezeEvidence(tx: Tx, actor: Actor, trialId: string, now: Date): Promise<{ evidenceId: string; hash: string; evidence: Evidence }> {
  const { bakeryId } = actor
  const evidence = await evidenceOf(tx, actor, trialId, now)
  const { text, hash } = textOfEvidence(evidence)
  const evidenceId = uuid()
  await tx.evidence.create({ data: { bakeryId, id: evidenceId, trialId, text, hash, frozenById: actor.personId, at: now } })
  return { evidenceId, hash, evidence }
}

async function evidenceOf(tx: Tx, actor: Actor, trialId: string, now: Date): Promise<Evidence> {
  const { bakeryId } = actor
  const loaded = await loadEvidence(tx, bakeryId, trialId)
  const { header, declared } = loaded
  const { comparison, limits, uncounted } = analyseTrial(declared, loaded.batches)
  if (!comparison) throw new Error('a trial that is ended has a comparison, if only an empty one')
  const costs = await costsOfTrial(tx, bakeryId, loaded, dayInZone(now, loaded.timeZone))
  const { kind, measure, margin, marginUnit, confidencePct, mixingDays, batchesPerArm, factor } = declared
  return {
    bakery: bakeryId,
    trial: {
      id: header.id,
      number: header.number,
      question: header.question,
      state: header.state,
      closedAt: header.closedAt?.toISOString() ?? null,
      closedWhy: header.closedWhy,
      planHash: header.planHash,
      formula: header.formula,
      controlVersion: header.controlVersion,
    },
    declared: {
      kind,
      measure: { name: measure.name, unit: measure.unit, digits: measure.digits, direction: measure.direction },
      margin,
      marginUnit,
      confidencePct,
      mixingDays,
      batchesPerArm,
      piecesPerBatch: header.piecesPerBatch,
      factor: factor && { name: factor.name, levels: [...factor.levels] },
    },
    isIndication: comparison.isIndication,
    arms: comparison.arms.map((result) => {
      const arm = loaded.arms.find(({ position }) => position === result.arm)!
      return { ...result, id: arm.id, name: arm.name, good: costs.arms.find((cost) => cost.arm === result.arm)?.good ?? null }
    }),
    controlMean: comparison.controlMean,
    worthwhile: comparison.worthwhile,
    method: comparison.method,
    loafVariation: comparison.loafVariation,
    limits: limits.map(({ code, arm, facts }) => ({ code, arm, facts: { ...facts } })),
    conditions: comparison.conditions,
    flags: comparison.flags,
    uncounted: uncounted.map(({ batch, why }) => ({ batch: batch.id, code: batch.code, arm: batch.arm, why })),
    costs,
    readings: await sealOfReadings(tx, bakeryId, trialId, header.measure),
    frozen: { at: now.toISOString(), by: { id: actor.personId, name: actor.name } },
  }
}
