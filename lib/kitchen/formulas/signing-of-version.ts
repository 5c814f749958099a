import 'server-only'
import type { Db, Tx } from '../../db/client'
import { allergensOfContent } from './content-of-version'
import { contentAsItIsNow, contentAsShown } from './content-as-shown'
import { readVersion, type VersionRead } from './read-version'
import { allergenChange, changesAllergens, inProduction, signaturesMissing, signaturesNeeded, type AllergenChange, type NeededSignature } from './rules'

export type Signing = {
  needed: NeededSignature[]
  missing: NeededSignature[]
  worksAlone: boolean
  /** Against what is in production, or else coming; null for a first version. */
  change: AllergenChange | null
}

/**
 * Which signatures a draft needs, and which are there. Compared with the version in production and with each signed
 * one that is coming, both as signed and with what their ingredients are now: neither a slice at a time nor a
 * correction in the stores slips through.
 */
export async function signingOfVersion(from: Db | Tx, version: VersionRead, now: Date): Promise<Signing> {
  const { bakeryId, formulaId } = version
  const signed = await from.formulaVersion.findMany({
    where: { bakeryId, formulaId, signedAt: { not: null } },
    select: { id: true, number: true, signedAt: true, effectiveAt: true },
  })
  const standing = inProduction(signed, now)
  const coming = signed.filter((each) => each.effectiveAt && each.effectiveAt > now)
  const references = [...(standing ? [standing] : []), ...coming]
  const mine = allergensOfContent(contentAsItIsNow(version).content)
  const changes: AllergenChange[] = []
  for (const { id } of references) {
    const other = await readVersion(from, bakeryId, id)
    if (!other) continue
    for (const shown of [contentAsShown(other), contentAsItIsNow(other)]) changes.push(allergenChange(allergensOfContent(shown.content), mine))
  }
  const { worksAlone } = await from.bakery.findUniqueOrThrow({ where: { bakeryId }, select: { worksAlone: true } })
  const headBakers = await from.person.count({ where: { bakeryId, role: 'head_baker', endedAt: null } })
  const needed = signaturesNeeded({ changesAllergens: changes.length > 0 ? changes.some(changesAllergens) : null, hasHeadBaker: headBakers > 0 })
  return {
    needed,
    missing: signaturesMissing(needed, version.signatures),
    worksAlone,
    change: changes.find(changesAllergens) ?? changes[0] ?? null,
  }
}
