import 'server-only'
import type { DeskActor } from '../../auth/actor'
import { levelOf } from '../../auth/rights'
import type { Db } from '../../db/client'
import { textOfFile } from '../../documents/evidence-file/text-of-file'
import type { FileOfFormat1 } from '../../documents/evidence-file/file-of-format-1'
import { readManifest } from '../../documents/evidence/read-manifest'
import { textOfEvidence } from '../../documents/evidence/text-of-evidence'
import { amendingActions } from '../amendments/noted-of-amendments'
import { hashOfFacts } from '../heavy/hash-of-facts'
import { Refusal } from '../refusal'
import { loadEvidence } from '../results/load-evidence'
import { isBroken, type Sealed } from '../results/load-sealed'
import { isEnded } from '../trials/rules'
import { amendmentsShown, cameAfter } from './amendments-to-keep'
import { evidenceToKeep } from './evidence-to-keep'
import { volumesOf, workOut } from './work-out'

/**
 * The evidence of a trial that ended, as a file: what was kept with its decision, or without one what it shows now.
 * Costs and the record only for those who see them.
 * @returns the text null where the book is not what was closed and nothing was kept, and where what was kept is of the
 * first format, which says too little to be checked; the facts are one hash over all that a check of it rests on, which
 * the moment of making a file is not
 * @throws Refusal 'not-found' | 'trial-not-ended' | 'took-too-long' | 'not-worked-out'
 */
export async function loadFile(
  from: Db,
  actor: DeskActor,
  trialId: string,
  now: Date,
): Promise<{ number: number; sealed: Sealed; file: { text: string; facts: string } | null }> {
  const { bakeryId } = actor
  const loaded = await loadEvidence(from, bakeryId, trialId)
  const { header, sealed } = loaded
  if (!isEnded(header.state)) throw new Refusal('trial-not-ended')
  const decision = await from.decision.findFirst({
    where: { bakeryId, trialId, takenBackAt: null },
    select: {
      id: true,
      version: { select: { id: true, contentText: true, contentHash: true } },
      evidence: { select: { text: true, hash: true, parts: { orderBy: { kind: 'asc' } } } },
    },
  })
  const version = decision?.version ?? null
  // Together, because what is worked out of amendments takes a while, and the record goes on.
  const [came, record] = await Promise.all([
    decision?.evidence || isBroken(sealed) ? null : cameAfter(from, bakeryId, trialId, loaded.found),
    entriesOf(
      from,
      actor,
      trialId,
      [trialId, decision?.id, version?.id].filter((id) => id !== undefined),
    ),
  ])
  const kept =
    decision?.evidence ?? (isBroken(sealed) ? null : textOfEvidence(await evidenceNow(from, actor, now, loaded, came)))
  if (!kept || readManifest(kept.text, kept.hash).outcome === 'unknown-format')
    return { number: header.number, sealed, file: null }
  const seesCosts = levelOf(actor, 'see-costs') === 'yes'
  const manifest = { text: kept.text, hash: kept.hash }
  const rest = {
    parts: kept.parts.map(({ kind, version: of, hash, text: own }) => ({
      kind,
      version: of,
      hash,
      text: kind === 'costs' && !seesCosts ? null : own,
    })),
    signed:
      version?.contentText && version.contentHash ? { text: version.contentText, hash: version.contentHash } : null,
    record,
  }
  return {
    number: header.number,
    sealed,
    file: {
      text: textOfFile({ manifest, ...rest }),
      facts: hashOfFacts([decision?.evidence ? manifest : null, rest]),
    },
  }
}

/** What an ended trial shows at this moment, with what came after its closing. */
async function evidenceNow(
  from: Db,
  actor: DeskActor,
  now: Date,
  loaded: Awaited<ReturnType<typeof loadEvidence>>,
  came: Awaited<ReturnType<typeof cameAfter>>,
) {
  const [worked, second] = await Promise.all([workOut(loaded), came?.workOutSecond() ?? null])
  const volumes = await volumesOf(loaded, worked)
  return evidenceToKeep(from, actor, now, loaded, {
    worked,
    volumes,
    amendments: came && amendmentsShown(came.after, second),
  })
}

/** What the record says of these things and of amendments from devices, with the entry before each and after. */
async function entriesOf(
  from: Db,
  actor: DeskActor,
  trialId: string,
  targets: readonly string[],
): Promise<FileOfFormat1['record']> {
  const { bakeryId } = actor
  const late = await from.amendment.findMany({
    where: { bakeryId, trialId, entryId: { not: null } },
    select: { at: true },
  })
  const own = await from.auditEntry.findMany({
    where: {
      bakeryId,
      OR: [
        { targetId: { in: [...targets] } },
        { action: amendingActions.device, at: { in: late.map(({ at }) => at) } },
      ],
    },
    select: { number: true },
  })
  const numbers = [...new Set(own.flatMap(({ number }) => [number - 1n, number, number + 1n]))]
  const entries = await from.auditEntry.findMany({
    where: { bakeryId, number: { in: numbers } },
    orderBy: { number: 'asc' },
    select: { number: true, entryText: true, hash: true },
  })
  const mayRead = levelOf(actor, 'read-record') === 'yes'
  return entries.map(({ number, entryText, hash }) => ({
    number: Number(number),
    hash,
    text: mayRead ? entryText : null,
  }))
}
