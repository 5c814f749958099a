import 'server-only'
import type { DeskActor } from '../../auth/actor'
import type { Db } from '../../db/client'
import { contentAsItIsNow } from '../formulas/content-as-shown'
import { readVersions, type VersionRead } from '../formulas/read-version'
import { signingBar } from '../formulas/signing-rules'
import { signingOfVersions, type Signing } from '../formulas/signing-of-version'
import { Refusal } from '../refusal'
import { fewOfAll, type Few } from './few-of'

/** Whose signature a draft needs is known only when allergens and costs are compared, so no more are looked at. */
const mostLookedAt = 20

type VersionRow = {
  versionId: string
  formulaId: string
  decisionId: string | null
  formula: string
  number: number
  reason: string
  since: Date
}

/** The drafts of formulas that want somebody's signature, the oldest first. */
export async function versionsToSign(db: Db, actor: DeskActor, now: Date): Promise<Few<VersionRow>> {
  const { bakeryId, personId } = actor
  const open = await db.formulaVersion.findMany({
    where: { bakeryId, signedAt: null, discardedAt: null, signatures: { none: { personId } } },
    select: { id: true },
    orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
    take: mostLookedAt + 1,
  })
  if (open.length === 0) return fewOfAll([], false)
  const read = await readVersions(
    db,
    bakeryId,
    open.slice(0, mostLookedAt).map(({ id }) => id),
  )
  const drafts = read.sort((a, b) => a.createdAt.getTime() - b.createdAt.getTime())
  const signingOf = await signingOfVersions(db, bakeryId, drafts, now)
  const theirs = drafts.filter((draft) => wantsSignature(draft, actor, signingOf))
  return fewOfAll(theirs.map(versionRow), open.length > mostLookedAt)
}

function wantsSignature(draft: VersionRead, person: DeskActor, signingOf: (version: VersionRead) => Signing): boolean {
  // What was signed once must still be what that signature is for.
  if (draft.contentHash !== null && draft.contentHash !== contentAsItIsNow(draft).hash) return false
  try {
    const { needed, worksAlone } = signingOf(draft)
    return signingBar({ person, draftedById: draft.draftedBy.id, needed, given: draft.signatures, worksAlone }) === null
  } catch (error) {
    // It is compared with one that this code cannot read, so nobody can sign it now.
    if (error instanceof Refusal) return false
    throw error
  }
}

function versionRow({
  id,
  formulaId,
  decision,
  formula,
  number,
  reason,
  createdAt,
  signatures,
}: VersionRead): VersionRow {
  return {
    versionId: id,
    formulaId,
    decisionId: decision?.id ?? null,
    formula: formula.name,
    number,
    reason,
    since: signatures.at(-1)?.at ?? createdAt,
  }
}
