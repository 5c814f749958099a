import 'server-only'
import type { DeskActor } from '../../auth/actor'
import { levelOf } from '../../auth/rights'
import type { Db } from '../../db/client'
import { allergensOfContent, contentOfVersion } from './content-of-version'
import { contentAsShown } from './content-as-shown'
import { figuredStages, ingredientsOfContent } from './ingredients-of-content'
import type { VersionRead } from './read-version'
import { changeBar } from './must-be-changeable'
import { allergenChange, changesAllergens, figuresOf, inProduction, stateOfVersion, type AllergenChange } from './rules'
import { shownCostChange } from './shown-cost-change'
import { meaningOfSignature, signaturesMissing, signingBar } from './signing-rules'
import { signingOfVersion } from './signing-of-version'
import { versionTimes } from './version-times'

/**
 * A version as a specification sheet, for a person: a draft as it stands now, a signed one as it was signed, with the
 * figures that follow from what the stores say of its ingredients today.
 * @param known other versions that were read beside it
 */
export async function showVersion(
  db: Db,
  actor: DeskActor,
  now: Date,
  version: VersionRead,
  known: readonly VersionRead[] = [],
) {
  const { content, hash, isWhole } = contentAsShown(version)
  const [siblings, ingredients, signing] = await Promise.all([
    db.formulaVersion.findMany({
      where: { bakeryId: actor.bakeryId, formulaId: version.formulaId },
      select: versionTimes,
      orderBy: { number: 'desc' },
    }),
    ingredientsOfContent(db, content),
    version.signedAt || version.discardedAt ? null : signingFor(db, actor, version, hash, now, known),
  ])
  const standing = inProduction(siblings, now)
  return {
    formula: version.formula,
    id: version.id,
    number: version.number,
    from: siblings.find((each) => each.id === version.fromVersionId) ?? null,
    state: stateOfVersion(version, siblings, now),
    signedAt: version.signedAt,
    effectiveAt: version.effectiveAt,
    createdAt: version.createdAt,
    draftedBy: version.draftedBy.name,
    revision: version.revision,
    content,
    contentHash: hash,
    isWhole,
    figures: figuresOf(figuredStages(content, ingredients), content.batch),
    allergens: allergensOfContent(content),
    sinceSigned: allergensSinceSigned(version),
    ingredients: ingredients.map(({ id, name, dustCaution, isEnded }) => ({ id, name, dustCaution, isEnded })),
    signatures: version.signatures.map(({ personName, role, meaning, at, byProposer }) => ({
      personName,
      role,
      meaning,
      at,
      byProposer,
    })),
    inProduction: standing && { id: standing.id, number: standing.number },
    coming: siblings.flatMap(({ id, number, effectiveAt }) =>
      effectiveAt && effectiveAt > now && id !== version.id ? [{ id, number, from: effectiveAt }] : [],
    ),
    versions: siblings.map(({ id, number }) => ({ id, number })),
    mayDraft: levelOf(actor, 'draft-formula') === 'yes',
    mayChange: levelOf(actor, 'draft-formula') === 'yes' && changeBar(version) === null,
    decision: version.decision && { id: version.decision.id, number: version.decision.number },
    signing,
  }
}

/** What an ingredient's allergens have become since a version was signed; null when they are the same, and for a draft. */
function allergensSinceSigned(version: VersionRead): AllergenChange | null {
  const change = allergenChange(
    allergensOfContent(contentAsShown(version).content),
    allergensOfContent(contentOfVersion(version)),
  )
  return changesAllergens(change) ? change : null
}

/** What is needed to put a draft in production, and what the person who looks at it can do towards it. */
async function signingFor(
  db: Db,
  actor: DeskActor,
  version: VersionRead,
  hash: string,
  now: Date,
  known: readonly VersionRead[],
) {
  const { needed, missing, grave, worksAlone, change, cost } = await signingOfVersion(db, version, now, known)
  const mayAtAll = levelOf(actor, 'sign-off-formula') === 'yes'
  const bar = signingBar({
    person: actor,
    draftedById: version.draftedBy.id,
    needed,
    given: version.signatures,
    worksAlone,
  })
  return {
    needed,
    missing,
    change,
    grave,
    cost: cost && levelOf(actor, 'see-costs') === 'yes' ? { ...shownCostChange(cost), against: cost.against } : null,
    /** After a first signature the content must still be what that signature is for. */
    hasMovedOn: version.contentHash !== null && version.contentHash !== hash,
    bar: mayAtAll ? bar : 'no-right',
    meaning: meaningOfSignature({
      needed,
      grave,
      role: actor.role,
      isProposer: actor.personId === version.draftedBy.id,
    }),
    isLast: signaturesMissing(needed, [...version.signatures, { role: actor.role }]).length === 0,
  } as const
}
