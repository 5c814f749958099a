import 'server-only'
import type { Composition } from '../../calc/formula/types'
import type { Db, Tx } from '../../db/client'
import type { VersionContent } from '../../documents/version-content/text-of-version-content'
import { compositionOf } from '../stores/composition-of'
import type { FiguredStage } from './rules'

export type IngredientNow = {
  id: string
  name: string
  composition: Composition | null
  dustCaution: boolean
  isEnded: boolean
}

/** What the stores say today of the ingredients of one content's stages, or several: composition, cautions, whether they are still in use. */
export async function ingredientsOfContent(
  from: Db | Tx,
  content: Pick<VersionContent, 'bakery' | 'stages'>,
): Promise<IngredientNow[]> {
  const ids = [...new Set(content.stages.flatMap((stage) => stage.lines.map((line) => line.ingredient.id)))]
  const rows = await from.ingredient.findMany({
    where: { bakeryId: content.bakery, id: { in: ids } },
    select: {
      id: true,
      name: true,
      dustCaution: true,
      endedAt: true,
      figures: { select: { figure: true, gPer100G: true } },
    },
    orderBy: { name: 'asc' },
  })
  return rows.map(({ figures, endedAt, ...ingredient }) => ({
    ...ingredient,
    composition: compositionOf(figures),
    isEnded: endedAt !== null,
  }))
}

/** A content's stages as the figures are worked out from. */
export function figuredStages(content: VersionContent, ingredients: readonly IngredientNow[]): FiguredStage[] {
  const compositions = new Map(ingredients.map(({ id, composition }) => [id, composition]))
  return content.stages.map((stage) => ({
    kind: stage.kind,
    lines: stage.lines.map(({ ingredient, pctFlour }) => ({
      ingredientId: ingredient.id,
      kind: ingredient.kind,
      pctFlour,
      composition: compositions.get(ingredient.id) ?? null,
    })),
  }))
}
