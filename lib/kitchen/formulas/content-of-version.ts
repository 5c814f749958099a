import 'server-only'
import { Allergen, type IngredientKind, type StageKind } from '../../db/generated/enums'
import type { VersionContent } from '../../documents/version-content/text-of-version-content'
import type { AllergenSum } from './rules'

/** A version's rows, as they are read from the database. */
export type VersionRows = {
  bakeryId: string
  id: string
  number: number
  fromVersionId: string | null
  reason: string
  pieces: number
  scalingMassG: number
  doughLossPct: number
  doughTempC: number
  mixTimeS: number
  bulkTimeS: number
  proofTimeS: number
  bakeTempC: number
  bakeTimeS: number
  method: string
  formula: { id: string; name: string }
  draftedBy: { id: string; name: string }
  decision: { id: string; evidence: { hash: string } } | null
  /** In order. */
  stages: readonly {
    kind: StageKind
    name: string
    lines: readonly {
      pctFlour: number
      ingredient: {
        id: string
        name: string
        kind: IngredientKind
        allergens: readonly Allergen[]
        allergensCheckedAt: Date | null
      }
    }[]
  }[]
}

/**
 * The content of a version out of its rows. Allergens are those of the ingredients at this moment, in the order of
 * the list, so that the same content has the same text.
 */
export function contentOfVersion(rows: VersionRows): VersionContent {
  return {
    bakery: rows.bakeryId,
    formula: { id: rows.formula.id, name: rows.formula.name },
    version: {
      id: rows.id,
      number: rows.number,
      from: rows.fromVersionId,
      reason: rows.reason,
      draftedBy: { id: rows.draftedBy.id, name: rows.draftedBy.name },
    },
    // Left out where there is none, so that the hashes of versions without a trial stay what they were.
    ...(rows.decision ? { evidence: { decision: rows.decision.id, hash: rows.decision.evidence.hash } } : {}),
    batch: { pieces: rows.pieces, scalingMassG: rows.scalingMassG, doughLossPct: rows.doughLossPct },
    process: {
      doughTempC: rows.doughTempC,
      mixTimeS: rows.mixTimeS,
      bulkTimeS: rows.bulkTimeS,
      proofTimeS: rows.proofTimeS,
      bakeTempC: rows.bakeTempC,
      bakeTimeS: rows.bakeTimeS,
      method: rows.method,
    },
    stages: rows.stages.map((stage) => ({
      kind: stage.kind,
      name: stage.name,
      lines: stage.lines.map(({ pctFlour, ingredient }) => ({
        ingredient: {
          id: ingredient.id,
          name: ingredient.name,
          kind: ingredient.kind,
          allergens: inOrder(ingredient.allergens),
          allergensChecked: ingredient.allergensCheckedAt !== null,
        },
        pctFlour,
      })),
    })),
  }
}

/** The allergens that the ingredients bring, and the ingredients of which nobody knows. */
export function allergensOfContent({ stages }: VersionContent): AllergenSum {
  const ingredients = stages.flatMap((stage) => stage.lines.map((line) => line.ingredient))
  const unchecked = new Map(
    ingredients.filter((each) => !each.allergensChecked).map(({ id, name }) => [id, { id, name }]),
  )
  return {
    known: inOrder(ingredients.flatMap((each) => each.allergens)),
    uncheckedIngredients: [...unchecked.values()],
  }
}

function inOrder(allergens: readonly Allergen[]): Allergen[] {
  return Object.values(Allergen).filter((each) => allergens.includes(each))
}
