import 'server-only'
import { z } from 'zod'
import { query } from '../query'
import { Refusal } from '../refusal'
import { contentAsItIsNow } from './content-as-shown'
import { mustBeChangeable } from './must-be-changeable'
import { readVersion } from './read-version'
import { compositionOf } from '../stores/composition-of'

/**
 * What the editor of a formula needs: the ingredients to choose from, and the draft to change, or none for a new
 * formula. Refuses: not-found, signed, discarded, drafted-from-trial.
 */
export const getEditor = query({
  name: 'formulas.get-editor',
  input: z.strictObject({ draft: z.strictObject({ formulaId: z.uuid(), versionId: z.uuid() }).nullable() }),
  right: 'draft-formula',
  async run({ db, actor, input }) {
    const { bakeryId } = actor
    const ingredients = await db.ingredient.findMany({
      where: { bakeryId },
      select: { id: true, name: true, kind: true, endedAt: true, figures: { select: { figure: true, gPer100G: true } } },
      orderBy: [{ name: 'asc' }, { id: 'asc' }],
      take: 2000,
    })
    const options = ingredients.map(({ id, name, kind, endedAt, figures }) => ({ id, name, kind, isEnded: endedAt !== null, composition: compositionOf(figures) }))
    if (!input.draft) return { ingredients: options.filter(({ isEnded }) => !isEnded), draft: null }
    const version = await readVersion(db, bakeryId, input.draft.versionId)
    if (!version || version.formulaId !== input.draft.formulaId) throw new Refusal('not-found')
    mustBeChangeable(version)
    const { content } = contentAsItIsNow(version)
    const used = new Set(content.stages.flatMap((stage) => stage.lines.map((line) => line.ingredient.id)))
    return {
      ingredients: options.filter(({ id, isEnded }) => !isEnded || used.has(id)),
      draft: { id: version.id, revision: version.revision, content },
    }
  },
})
