import 'server-only'
import { createHash } from 'node:crypto'
import { z } from 'zod'
import { canonicalText } from '../../db/append-audit'
import { Allergen, IngredientKind, StageKind } from '../../db/generated/enums'
import type { AllergenSum } from './rules'

/** Number of the form in which a version's content is written; a change of form gets a new one. */
const contentFormat = 1

const content = z.strictObject({
  format: z.literal(contentFormat),
  bakery: z.uuid(),
  formula: z.strictObject({ id: z.uuid(), name: z.string() }),
  version: z.strictObject({
    id: z.uuid(),
    number: z.int(),
    from: z.uuid().nullable(),
    reason: z.string(),
    draftedBy: z.strictObject({ id: z.uuid(), name: z.string() }),
  }),
  /** Only of a version that was drafted from an arm of a trial: the decision, and SHA-256 of the evidence frozen with it. */
  evidence: z.strictObject({ decision: z.uuid(), hash: z.string().regex(/^[0-9a-f]{64}$/) }).optional(),
  batch: z.strictObject({ pieces: z.int(), scalingMassG: z.number(), doughLossPct: z.number() }),
  process: z.strictObject({
    doughTempC: z.number(),
    mixTimeS: z.int(),
    bulkTimeS: z.int(),
    proofTimeS: z.int(),
    bakeTempC: z.number(),
    bakeTimeS: z.int(),
    method: z.string(),
  }),
  stages: z.array(
    z.strictObject({
      kind: z.enum(StageKind),
      name: z.string(),
      lines: z.array(
        z.strictObject({
          ingredient: z.strictObject({
            id: z.uuid(),
            name: z.string(),
            kind: z.enum(IngredientKind),
            /** Those that are known; only when they were checked are these all. */
            allergens: z.array(z.enum(Allergen)),
            allergensChecked: z.boolean(),
          }),
          pctFlour: z.number(),
        }),
      ),
    }),
  ),
})

/** What a version says: exactly this is shown, hashed, signed and kept. */
export type VersionContent = z.output<typeof content>

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
      ingredient: { id: string; name: string; kind: IngredientKind; allergens: readonly Allergen[]; allergensCheckedAt: Date | null }
    }[]
  }[]
}

/**
 * The content of a version out of its rows. Allergens are those of the ingredients at this moment, in the order of
 * the list, so that the same content has the same text.
 */
export function contentOfVersion(rows: VersionRows): VersionContent {
  return {
    format: contentFormat,
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

/** The content's one text (RFC 8785), which is what is signed. */
export function textOfContent(of: VersionContent): string {
  const { evidence, ...plain } = of
  return canonicalText(evidence ? { ...plain, evidence } : plain)
}

/** SHA-256 of a content's text, in hexadecimal. */
export function hashOfContentText(text: string): string {
  return createHash('sha256').update(text, 'utf8').digest('hex')
}

/** A content read back from its text. @throws ZodError when it is not one: a bug or a damaged row */
export function readContentText(text: string): VersionContent {
  return content.parse(JSON.parse(text))
}

/** The allergens that the ingredients bring, and the ingredients of which nobody knows. */
export function allergensOfContent({ stages }: VersionContent): AllergenSum {
  const ingredients = stages.flatMap((stage) => stage.lines.map((line) => line.ingredient))
  const unchecked = new Map(ingredients.filter((each) => !each.allergensChecked).map(({ id, name }) => [id, { id, name }]))
  return { known: inOrder(ingredients.flatMap((each) => each.allergens)), uncheckedIngredients: [...unchecked.values()] }
}

function inOrder(allergens: readonly Allergen[]): Allergen[] {
  return Object.values(Allergen).filter((each) => allergens.includes(each))
}
