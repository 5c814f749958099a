import 'server-only'
import { costDifference } from '../../calc/cost/cost-difference'
import type { Decimal } from '../../calc/cost/decimal'
import type { Db, Tx } from '../../db/client'
import { dayInZone } from '../day-in-zone'
import { changesCost } from './changes-cost'
import { allergensOfContent, contentOfVersion } from './content-of-version'
import { contentAsShown } from './content-as-shown'
import { pieceCosts, type CostedPiece } from './piece-costs'
import { readVersion, type VersionRead } from './read-version'
import { allergenChange, changesAllergens, inProduction, type AllergenChange } from './rules'
import { graveChange, signaturesMissing, signaturesNeeded, type GraveChange, type NeededSignature } from './signing-rules'

export type CostChange = {
  before: CostedPiece
  after: CostedPiece
  /** % of the cost before; null where it cannot be said. */
  differencePct: Decimal | null
  /** Day of the prices. */
  day: string
  limitPct: number
  isBeyondLimit: boolean
}

export type Signing = {
  needed: NeededSignature[]
  missing: NeededSignature[]
  /** What makes it more than one second person's affair. */
  grave: GraveChange | null
  worksAlone: boolean
  /** Against what is in production, or else coming; null for a first version. */
  change: AllergenChange | null
  /** Amounts: for signing, and for those who see costs. Against which version, and whether as the one that the owner signed last. */
  cost: (CostChange & { against: { number: number; isOwners: boolean } }) | null
}

/**
 * Which signatures a draft needs, and which are there. Compared with the version in production and with each signed
 * one that is coming, as signed and with what their ingredients are and cost now, and in cost also with the last one that
 * the owner signed: neither a slice at a time nor a correction in the stores slips through.
 */
export async function signingOfVersion(from: Db | Tx, version: VersionRead, now: Date): Promise<Signing> {
  const { bakeryId, formulaId } = version
  const [signed, bakery, headBakers] = await Promise.all([
    from.formulaVersion.findMany({
      where: { bakeryId, formulaId, signedAt: { not: null } },
      select: { id: true, number: true, signedAt: true, effectiveAt: true, signatures: { select: { role: true } } },
      orderBy: [{ signedAt: 'asc' }, { number: 'asc' }],
    }),
    from.bakery.findUniqueOrThrow({ where: { bakeryId }, select: { worksAlone: true, timeZone: true, costChangeLimitPct: true } }),
    from.person.count({ where: { bakeryId, role: 'head_baker', endedAt: null } }),
  ])
  const standing = inProduction(signed, now)
  const coming = signed.filter((each) => each.effectiveAt && each.effectiveAt > now)
  const references = [...(standing ? [standing] : []), ...coming]
  // What the owner has never signed is measured from where it began.
  const ofOwner = signed.findLast(({ signatures }) => signatures.some(({ role }) => role === 'owner')) ?? signed[0]
  const compared = [...new Set([...references, ...(ofOwner ? [ofOwner] : [])])]
  const others = (await Promise.all(compared.map(({ id }) => readVersion(from, bakeryId, id)))).filter((other) => other !== null)
  const mine = contentOfVersion(version)
  const day = dayInZone(now, bakery.timeZone)
  const befores = others.map((other) => contentAsShown(other).content)
  const [cost, ...costsBefore] = await pieceCosts(from, bakeryId, [mine, ...befores], day)
  const changes = others.flatMap((other, i) =>
    references.some(({ id }) => id === other.id)
      ? [befores[i]!, contentOfVersion(other)].map((content) => allergenChange(allergensOfContent(content), allergensOfContent(mine)))
      : [],
  )
  const costs = others.map(({ id, number }, i) => ({
    ...costChange(costsBefore[i]!, cost!, day, bakery.costChangeLimitPct),
    against: { number, isOwners: id === ofOwner?.id && id !== standing?.id },
  }))
  const grave = graveChange({ changesAllergens: changes.some(changesAllergens), changesCost: costs.some(({ isBeyondLimit }) => isBeyondLimit) })
  const needed = signaturesNeeded({ grave, hasHeadBaker: headBakers > 0, isBegun: version.signatures.length > 0 })
  return {
    needed,
    missing: signaturesMissing(needed, version.signatures),
    grave,
    worksAlone: bakery.worksAlone,
    change: changes.find(changesAllergens) ?? changes[0] ?? null,
    cost: costs.find(({ isBeyondLimit }) => isBeyondLimit) ?? costs[0] ?? null,
  }
}

/** What a piece costs before and after. @param limitPct beyond which the owner must know, ≥ 0 */
export function costChange(before: CostedPiece, after: CostedPiece, day: string, limitPct: number): CostChange {
  const isKnown = before.perPieceMinor !== null && after.perPieceMinor !== null && before.currency === after.currency
  const differencePct = isKnown ? costDifference({ controlMinor: before.perPieceMinor!, armMinor: after.perPieceMinor! }).differencePct : null
  return { before, after, differencePct, day, limitPct, isBeyondLimit: changesCost(before, after, limitPct) }
}
