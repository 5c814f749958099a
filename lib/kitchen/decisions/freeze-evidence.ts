import 'server-only'
import { v7 as uuid } from 'uuid'
import type { DeskActor } from '../../auth/actor'
import { db, type Tx } from '../../db/client'
import { textOfEvidence, type EvidenceToKeep } from '../../documents/evidence/text-of-evidence'
import { type CameAfter, amendmentsShown, cameAfter } from '../evidence/amendments-to-keep'
import { evidenceToKeep } from '../evidence/evidence-to-keep'
import { volumesOf, workOut, type WorkedOut } from '../evidence/work-out'
import { hashOfFacts } from '../heavy/hash-of-facts'
import { Refusal } from '../refusal'
import { loadEvidence } from '../results/load-evidence'
import { isBroken } from '../results/load-sealed'
import type { VolumeRatios } from '../results/volume-ratios'

type Shown = { facts: string; worked: WorkedOut; volumes: VolumeRatios; second: WorkedOut | null }

/** What a trial shows at this moment, for `freezeEvidence`: worked out before the transaction that keeps it. @throws Refusal 'not-found' | 'seal-broken' | 'took-too-long' | 'not-worked-out' */
export async function analyseToFreeze(bakeryId: string, trialId: string): Promise<Shown> {
  const loaded = await loadEvidence(db(), bakeryId, trialId)
  if (isBroken(loaded.sealed)) throw new Refusal('seal-broken')
  const came = await cameAfter(db(), bakeryId, trialId, loaded.found)
  const [worked, second] = await Promise.all([workOut(loaded), came?.workOutSecond() ?? null])
  return { facts: factsOf(loaded, came?.after), worked, volumes: await volumesOf(loaded, worked), second }
}

/**
 * Keeps what an ended trial shows, never to be worked out again. The trial is held already.
 * @throws Refusal 'seal-broken' where the book is not what was closed; 'stale-moved-on' where a reading or an amendment came or changed since that was worked out
 */
export async function freezeEvidence(
  tx: Tx,
  actor: DeskActor,
  trialId: string,
  now: Date,
  shown: Shown,
): Promise<{ evidenceId: string; hash: string; evidence: EvidenceToKeep['shown'] }> {
  const { bakeryId } = actor
  const loaded = await loadEvidence(tx, bakeryId, trialId)
  if (isBroken(loaded.sealed)) throw new Refusal('seal-broken')
  const after = (await cameAfter(tx, bakeryId, trialId, loaded.found))?.after ?? null
  if (factsOf(loaded, after ?? undefined) !== shown.facts) throw new Refusal('stale-moved-on')
  const amendments = after && amendmentsShown(after, shown.second)
  const evidence = await evidenceToKeep(tx, actor, now, loaded, { ...shown, amendments })
  const { text, hash, parts } = textOfEvidence(evidence)
  const evidenceId = uuid()
  await tx.evidence.create({
    data: { bakeryId, id: evidenceId, trialId, text, hash, frozenById: actor.personId, at: now },
  })
  await tx.evidencePart.createMany({ data: parts.map((part) => ({ ...part, bakeryId, evidenceId })) })
  return { evidenceId, hash, evidence: evidence.shown }
}

/** All that is worked out before rests on. */
function factsOf(
  { declared, batches, conduct }: Pick<Awaited<ReturnType<typeof loadEvidence>>, 'declared' | 'batches' | 'conduct'>,
  after: CameAfter | undefined,
): string {
  return hashOfFacts([declared, batches, conduct.foundCauses, after])
}
