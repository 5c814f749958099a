import 'server-only'
import type { Tx } from '../../db/client'
import type { Allergen, LotEnd } from '../../db/generated/enums'
import { articleOf, lotOfOther } from '../stores/code-on-label.input'
import type { WeighingEntry } from './log-weighing.input'

/** What the stores hold under a code that was typed for an ingredient. */
export type TypedCode = {
  /** By which two spellings are the same code. */
  key: string
  ingredient: { name: string; allergens: readonly Allergen[]; allergensCheckedAt: Date | null }
  /** The lot that it is: in use, or found to be another one since. */
  lot: { id: string; code: string } | null
  /** Why the lot of this code was ended that was ended last; null where one is in use or none was there. */
  ended: LotEnd | null
  /** The ingredient whose lot it is instead. */
  other: string | null
}

type Wanted = { ingredientId: string; code: string }
type Found = {
  wantedId: string
  wanted: string
  key: string
  id: string | null
  code: string | null
  ingredientId: string | null
  name: string | null
  endedWhy: LotEnd | null
  isSame: boolean
}

/** One name for a code that was typed for an ingredient. */
export function typedCodeKey(ingredientId: string, code: string): string {
  return `${ingredientId.toLowerCase()} ${code}`
}

/** What the stores say of the codes that entries name, by `typedCodeKey`; the same spelling by the database's own rule. */
export async function loadTypedCodes(
  tx: Tx,
  bakeryId: string,
  entries: readonly WeighingEntry[],
): Promise<Map<string, TypedCode>> {
  const wanted = new Map<string, Wanted>(
    entries.flatMap(({ ingredientId, lots }) =>
      (lots ?? []).flatMap(({ code }) =>
        code === null || code === undefined
          ? []
          : [[typedCodeKey(ingredientId, code), { ingredientId: ingredientId.toLowerCase(), code }] as const],
      ),
    ),
  )
  if (wanted.size === 0) return new Map()
  const asked = [...wanted.values()].map((each) => ({ ...each, article: articleOf(each.code) }))
  const [ingredients, found] = await Promise.all([
    tx.ingredient.findMany({
      where: { bakeryId, id: { in: asked.map(({ ingredientId }) => ingredientId) } },
      select: { id: true, name: true, allergens: true, allergensCheckedAt: true },
    }),
    tx.$queryRaw<Found[]>`
      SELECT wanted."ingredientId" AS "wantedId", wanted.code AS wanted, lower(wanted.code) AS key,
        lot.id, lot.code, lot.ingredient_id AS "ingredientId", ingredient.name, lot.ended_why AS "endedWhy",
        lower(lot.code) = lower(wanted.code) IS TRUE AS "isSame"
      FROM jsonb_to_recordset(${JSON.stringify(asked)}::jsonb) AS wanted ("ingredientId" uuid, code text, article text)
      LEFT JOIN lot ON lot.bakery_id = ${bakeryId}::uuid
        AND (lower(lot.code) = lower(wanted.code) OR (lot.ended_at IS NULL AND strpos(lot.code, wanted.article) > 0))
      LEFT JOIN ingredient ON ingredient.bakery_id = lot.bakery_id AND ingredient.id = lot.ingredient_id
      ORDER BY lot.ended_at DESC NULLS FIRST, lot.id DESC`,
  ])
  return new Map(
    [...wanted].flatMap(([key, { ingredientId, code }]) => {
      const ingredient = ingredients.find(({ id }) => id === ingredientId)
      const rows = found.filter((row) => row.wantedId === ingredientId && row.wanted === code)
      const [first] = rows
      return ingredient && first ? [[key, typedCodeOf(first.key, ingredient, ingredientId, code, rows)] as const] : []
    }),
  )
}

function typedCodeOf(
  key: string,
  ingredient: TypedCode['ingredient'],
  ingredientId: string,
  code: string,
  rows: readonly Found[],
): TypedCode {
  const lots = rows.flatMap(({ id, code: ofLot, ingredientId: ofId, name, endedWhy, isSame }) =>
    id === null || ofLot === null || ofId === null || name === null
      ? []
      : [{ id, code: ofLot, ingredientId: ofId, name, endedWhy, isSame }],
  )
  const own = lots.filter((lot) => lot.ingredientId === ingredientId && lot.isSame)
  const inUse = own.find(({ endedWhy }) => endedWhy === null)
  // Typed wrongly once more, it is what it was found to be before.
  const last = own[0]?.endedWhy === 'other_lot' ? own[0] : undefined
  const lot = inUse ?? last ?? null
  return {
    key,
    ingredient,
    lot: lot && { id: lot.id, code: lot.code },
    ended: lot === null ? (own[0]?.endedWhy ?? null) : null,
    other:
      own.length > 0
        ? null
        : (lotOfOther(
            code,
            ingredientId,
            lots.filter(({ endedWhy }) => endedWhy === null),
          )?.name ?? null),
  }
}
