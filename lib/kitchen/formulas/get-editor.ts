import 'server-only'
import { z } from 'zod'
import { query } from '../query'
import { Refusal } from '../refusal'
import { contentAsItIsNow } from './content-as-shown'
import { mustBeChangeable } from './must-be-changeable'
import { readVersion } from './read-version'
import { compositionOf } from '../stores/composition-of'

/**
 * What the editor of a formula needs: the draft to change with what the stores say of its ingredients, or none for a
 * new formula; and whether there is anything to choose at all. Others are found by name as they are chosen
 * (stores.find-ingredients). Refuses: not-found, signed, discarded, drafted-from-trial.
 */
export const getEditor = query({
  name: 'formulas.get-editor',
  input: z.strictObject({ draft: z.strictObject({ formulaId: z.uuid(), versionId: z.uuid() }).nullable() }),
  right: 'draft-formula',
  async run({ db, actor, input }) {
    const { bakeryId } = actor
    const hasIngredients =
      (await db.ingredient.findFirst({ where: { bakeryId, endedAt: null }, select: { id: true } })) !== null
    if (!input.draft) return { hasIngredients, ingredients: [], draft: null }
    const version = await readVersion(db, bakeryId, input.draft.versionId)
    if (!version || version.formulaId !== input.draft.formulaId) throw new Refusal('not-found')
    mustBeChangeable(version)
    const { content } = contentAsItIsNow(version)
    const ids = [...new Set(content.stages.flatMap((stage) => stage.lines.map((line) => line.ingredient.id)))]
    const used = await db.ingredient.findMany({
      where: { bakeryId, id: { in: ids } },
      select: {
        id: true,
        name: true,
        kind: true,
        endedAt: true,
        figures: { select: { figure: true, gPer100G: true } },
      },
    })
    return {
      hasIngredients,
      ingredients: used.map(({ id, name, kind, endedAt, figures }) => ({
        id,
        name,
        kind,
        isEnded: endedAt !== null,
        composition: compositionOf(figures),
      })),
      draft: { id: version.id, revision: version.revision, content },
    }
  },
})
