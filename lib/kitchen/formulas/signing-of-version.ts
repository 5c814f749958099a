import 'server-only'
import { costDifference } from '../../calc/cost/cost-difference'
import type { Decimal } from '../../calc/cost/decimal'
import type { Db, Tx } from '../../db/client'
import type { VersionContent } from '../../documents/version-content/text-of-version-content'
import { dayInZone } from '../day-in-zone'
import { Refusal } from '../refusal'
import { changesCost } from './changes-cost'
import { allergensOfContent, contentOfVersion } from './content-of-version'
import { contentAsShown } from './content-as-shown'
import { pieceCosts, type CostedPiece } from './piece-costs'
import { readVersions, type VersionRead } from './read-version'
import { allergenChange, changesAllergens, inProduction, type AllergenChange } from './rules'
import {
  graveChange,
  signaturesMissing,
  signaturesNeeded,
  type GraveChange,
  type NeededSignature,
} from './signing-rules'

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
 * @param known versions that were read a moment ago for the same answer, and are not read again
 * @throws Refusal 'unknown-format' | 'damaged-text' where one that it is compared with cannot be read
 */
export async function signingOfVersion(
  from: Db | Tx,
  version: VersionRead,
  now: Date,
  known: readonly VersionRead[] = [],
): Promise<Signing> {
  const signingOf = await signingOfVersions(from, version.bakeryId, [version], now, known)
  return signingOf(version)
}

/**
 * As `signingOfVersion`, for several drafts of a bakery by the statements of one.
 * @returns what answers for each of them, and throws for the one that it cannot answer for
 */
export async function signingOfVersions(
  from: Db | Tx,
  bakeryId: string,
  versions: readonly VersionRead[],
  now: Date,
  known: readonly VersionRead[] = [],
): Promise<(version: VersionRead) => Signing> {
  const [signedOfAll, bakery, headBakers] = await Promise.all([
    from.formulaVersion.findMany({
      where: {
        bakeryId,
        formulaId: { in: [...new Set(versions.map(({ formulaId }) => formulaId))] },
        signedAt: { not: null },
      },
      select: {
        id: true,
        formulaId: true,
        number: true,
        signedAt: true,
        effectiveAt: true,
        signatures: { select: { role: true } },
      },
      orderBy: [{ signedAt: 'asc' }, { number: 'asc' }],
    }),
    from.bakery.findUniqueOrThrow({
      where: { bakeryId },
      select: { worksAlone: true, timeZone: true, costChangeLimitPct: true },
    }),
    from.person.count({ where: { bakeryId, role: 'head_baker', endedAt: null } }),
  ])
  const comparedOf = (formulaId: string) => {
    const signed = signedOfAll.filter((each) => each.formulaId === formulaId)
    const standing = inProduction(signed, now)
    const coming = signed.filter((each) => each.effectiveAt && each.effectiveAt > now)
    // What the owner has never signed is measured from where it began.
    const ofOwner = signed.findLast(({ signatures }) => signatures.some(({ role }) => role === 'owner')) ?? signed[0]
    const references = [...(standing ? [standing] : []), ...coming]
    return { standing, references, ofOwner, all: [...new Set([...references, ...(ofOwner ? [ofOwner] : [])])] }
  }
  const compared = new Set(versions.flatMap(({ formulaId }) => comparedOf(formulaId).all.map(({ id }) => id)))
  const there = known.filter(({ id }) => compared.has(id))
  const missing = [...compared].filter((id) => !there.some((each) => each.id === id))
  const others = [...there, ...(missing.length > 0 ? await readVersions(from, bakeryId, missing) : [])]
  const shown = new Map(others.map((other) => [other.id, shownOrRefusal(other)]))
  const day = dayInZone(now, bakery.timeZone)
  const costed = [
    ...versions.map((version) => ({ id: version.id, content: contentOfVersion(version) })),
    ...[...shown].flatMap(([id, content]) => (content instanceof Refusal ? [] : [{ id, content }])),
  ]
  const costs = await pieceCosts(
    from,
    bakeryId,
    costed.map(({ content }) => content),
    day,
  )
  const costOf = (versionId: string) => costs[costed.findIndex(({ id }) => id === versionId)]

  return (version) => {
    const { standing, references, ofOwner, all } = comparedOf(version.formulaId)
    const mine = contentOfVersion(version)
    const cost = costOf(version.id)
    const befores = all.flatMap(({ id, number }) => {
      const other = others.find((each) => each.id === id)
      const content = shown.get(id)
      if (content instanceof Refusal) throw content
      return other && content ? [{ id, number, contents: [content, contentOfVersion(other)] }] : []
    })
    const changes = befores.flatMap(({ id, contents }) =>
      references.some((reference) => reference.id === id)
        ? contents.map((content) => allergenChange(allergensOfContent(content), allergensOfContent(mine)))
        : [],
    )
    const changesOfCost = befores.flatMap(({ id, number }) => {
      const before = costOf(id)
      if (!before || !cost) return []
      return [
        {
          ...costChange(before, cost, day, bakery.costChangeLimitPct),
          against: { number, isOwners: id === ofOwner?.id && id !== standing?.id },
        },
      ]
    })
    const grave = graveChange({
      changesAllergens: changes.some(changesAllergens),
      changesCost: changesOfCost.some(({ isBeyondLimit }) => isBeyondLimit),
    })
    const needed = signaturesNeeded({ grave, hasHeadBaker: headBakers > 0, isBegun: version.signatures.length > 0 })
    return {
      needed,
      missing: signaturesMissing(needed, version.signatures),
      grave,
      worksAlone: bakery.worksAlone,
      change: changes.find(changesAllergens) ?? changes[0] ?? null,
      cost: changesOfCost.find(({ isBeyondLimit }) => isBeyondLimit) ?? changesOfCost[0] ?? null,
    }
  }
}

/** One that cannot be read stands in the way of those that are compared with it, and of no other. */
function shownOrRefusal(version: VersionRead): VersionContent | Refusal {
  try {
    return contentAsShown(version).content
  } catch (error) {
    if (error instanceof Refusal) return error
    throw error
  }
}

/** What a piece costs before and after. @param limitPct beyond which the owner must know, ≥ 0 */
export function costChange(before: CostedPiece, after: CostedPiece, day: string, limitPct: number): CostChange {
  const [controlMinor, armMinor] = [before.perPieceMinor, after.perPieceMinor]
  const differencePct =
    controlMinor !== null && armMinor !== null && before.currency === after.currency
      ? costDifference({ controlMinor, armMinor }).differencePct
      : null
  return { before, after, differencePct, day, limitPct, isBeyondLimit: changesCost(before, after, limitPct) }
}
