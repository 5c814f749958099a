import 'server-only'
import { v7 as uuid } from 'uuid'
import type { DeskActor } from '../../auth/actor'
import { db, type Tx } from '../../db/client'
import { textOfEvidence, type Evidence } from '../../documents/evidence/text-of-evidence'
import { dayInZone } from '../day-in-zone'
import { analyseOnce } from '../results/analyse-once'
import type { TrialAnalysis } from '../results/analyse-trial'
import { costsOfTrial } from '../results/costs-of-trial'
import { isBroken, loadEvidence } from '../results/load-evidence'
import { sealOfReadings } from './seal-of-readings'
import { hashOfFacts } from '../heavy/hash-of-facts'
import { Refusal } from '../refusal'
import { sureOf } from '../sure-of'

type Shown = { facts: string; analysis: TrialAnalysis }

/** What a trial shows at this moment, for `freezeEvidence`: worked out before the transaction that keeps it. @throws Refusal 'not-found' | 'seal-broken' | 'took-too-long' | 'not-worked-out' */
export async function analyseToFreeze(bakeryId: string, trialId: string): Promise<Shown> {
  const { declared, batches, sealed } = await loadEvidence(db(), bakeryId, trialId)
  if (isBroken(sealed)) throw new Refusal('seal-broken')
  return { facts: hashOfFacts([declared, batches]), analysis: await analyseOnce(declared, batches) }
}

/**
 * Keeps what an ended trial shows, never to be worked out again. The trial is held already.
 * @throws Refusal 'seal-broken' where the book is not what was closed; 'stale-moved-on' where a reading came or changed since that was worked out
 */
export async function freezeEvidence(
  tx: Tx,
  actor: DeskActor,
  trialId: string,
  now: Date,
  shown: Shown,
): Promise<{ evidenceId: string; hash: string; evidence: Evidence }> {
  const { bakeryId } = actor
  const evidence = await evidenceOf(tx, actor, trialId, now, shown)
  const { text, hash } = textOfEvidence(evidence)
  const evidenceId = uuid()
  await tx.evidence.create({
    data: { bakeryId, id: evidenceId, trialId, text, hash, frozenById: actor.personId, at: now },
  })
  return { evidenceId, hash, evidence }
}

async function evidenceOf(tx: Tx, actor: DeskActor, trialId: string, now: Date, shown: Shown): Promise<Evidence> {
  const { bakeryId } = actor
  const loaded = await loadEvidence(tx, bakeryId, trialId)
  const { header, declared } = loaded
  if (isBroken(loaded.sealed)) throw new Refusal('seal-broken')
  if (hashOfFacts([declared, loaded.batches]) !== shown.facts) throw new Refusal('stale-moved-on')
  const { comparison, limits, uncounted } = shown.analysis
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
      const arm = sureOf(
        loaded.arms.find(({ position }) => position === result.arm),
        'the arm of a result',
      )
      return {
        ...result,
        id: arm.id,
        name: arm.name,
        good: costs.arms.find((cost) => cost.arm === result.arm)?.good ?? null,
      }
    }),
    controlMean: comparison.controlMean,
    worthwhile: comparison.worthwhile,
    method: comparison.method,
    loafVariation: comparison.loafVariation,
    limits: limits.map(({ code, arm, facts }) => ({ code, arm, facts: { ...facts } })),
    conditions: comparison.conditions,
    flags: comparison.flags,
    uncounted: uncounted.map(({ batch, why }) => ({
      batch: batch.id,
      code: batch.code,
      arm: batch.arm,
      // Format 1 has no word for a dough that was not baked; that it was not measured is true.
      why: why === 'not-baked' ? 'open' : why,
    })),
    costs,
    readings: await sealOfReadings(tx, bakeryId, trialId, header.measure),
    frozen: { at: now.toISOString(), by: { id: actor.personId, name: actor.name } },
  }
}
