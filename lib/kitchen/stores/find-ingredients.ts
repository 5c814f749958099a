import 'server-only'
import type { Db } from '../../db/client'
import { Prisma } from '../../db/generated/client'
import type { IngredientKind } from '../../db/generated/enums'
import type { Composition } from '../../calc/formula/types'
import { compositionOf } from './composition-of'
import { query } from '../query'
import { isKeepable } from '../seen-text.input'
import { findIngredientsInput } from './find-ingredients.input'

export type FoundIngredient = {
  id: string
  name: string
  kind: IngredientKind
  activeName: string | null
  isEnded: boolean
  composition: Composition | null
}

export type FoundIngredients = {
  /** The first of them. */
  options: FoundIngredient[]
  /** How many there are in all. */
  count: number
  /** The one that what was typed is the whole name of; null where it is nobody's, or that of several. */
  named: FoundIngredient | null
}

/** So many are shown at once. */
const most = 20
/** Longer than any name. */
const longestPart = 200

/**
 * Ingredients to choose from, by part of a name: accents, capitals and spaces at the ends do not matter. Those that are
 * called so come first, then those that begin so, then by name. Ended ones are left out but for those of `ids`, which
 * the form holds already. Without a part: those of `ids` themselves, all of them.
 */
export const findIngredients = query({
  name: 'stores.find-ingredients',
  input: findIngredientsInput,
  right: 'read-work',
  async run({ db, actor, input: { part, ids } }): Promise<FoundIngredients> {
    const { bakeryId } = actor
    if (part === null) {
      const options = await withComposition(db, bakeryId, ids)
      return { options, count: options.length, named: null }
    }
    const typed = part.trim()
    if (typed.length > longestPart || !isKeepable(typed)) return { options: [], count: 0, named: null }
    const rows = await db.$queryRaw<{ id: string; name: string; is_called_so: boolean; count: number }[]>`
      SELECT id, name, is_called_so, (count(*) OVER ())::int AS count
      FROM (
        SELECT id, name, folded, folded = typed AS is_called_so, position(typed IN folded) AS place
        FROM ingredient, LATERAL (SELECT ${foldedOf(Prisma.sql`name`)} AS folded, ${foldedOf(Prisma.sql`${typed}::text`)} AS typed) AS f
        WHERE bakery_id = ${bakeryId}::uuid AND (ended_at IS NULL OR id = ANY(${ids}::uuid[]))
      ) AS named
      WHERE place > 0
      ORDER BY name = ${typed} DESC, is_called_so DESC, place > 1, folded, name, id
      LIMIT ${most}`
    const options = await withComposition(
      db,
      bakeryId,
      rows.map(({ id }) => id),
    )
    const called = rows.filter((row) => row.is_called_so)
    const one = called.length === 1 ? called[0] : called.find(({ name }) => name === typed)
    return { options, count: rows[0]?.count ?? 0, named: options.find(({ id }) => id === one?.id) ?? null }
  },
})

/** A name without accents and capitals, and with the letters that Unicode does not take apart as most keyboards have them. */
function foldedOf(text: Prisma.Sql): Prisma.Sql {
  const plain = Prisma.sql`lower(regexp_replace(normalize(${text}, NFKD), '[\\u0300-\\u036f]', '', 'g'))`
  return Prisma.sql`translate(replace(replace(replace(${plain}, 'ß', 'ss'), 'æ', 'ae'), 'œ', 'oe'), 'øłđı', 'oldi')`
}

/** In the order of the ids. */
async function withComposition(db: Db, bakeryId: string, ids: readonly string[]): Promise<FoundIngredient[]> {
  if (ids.length === 0) return []
  const rows = await db.ingredient.findMany({
    where: { bakeryId, id: { in: [...ids] } },
    select: {
      id: true,
      name: true,
      kind: true,
      activeName: true,
      endedAt: true,
      figures: { select: { figure: true, gPer100G: true } },
    },
  })
  const byId = new Map(
    rows.map(({ endedAt, figures, ...row }) => [
      row.id,
      { ...row, isEnded: endedAt !== null, composition: compositionOf(figures) },
    ]),
  )
  return [...new Set(ids)].flatMap((id) => byId.get(id) ?? [])
}
