import 'server-only'
import { command } from '../command'
import { Refusal } from '../refusal'
import { addDraft } from './add-draft'
import { draftVersionInput } from './draft-version.input'
import { lockFormulaOfVersion } from './lock-formula'
import { readVersion } from './read-version'

/** Drafts a new version from any version of the same formula: everything of it but the reason. Refuses: not-found. */
export const draftVersion = command({
  name: 'formulas.draft-version',
  input: draftVersionInput,
  right: 'draft-formula',
  async run({ tx, actor, now, input }) {
    const { bakeryId } = actor
    const formulaId = await lockFormulaOfVersion(tx, bakeryId, input.fromVersionId)
    const from = await readVersion(tx, bakeryId, input.fromVersionId)
    if (!from) throw new Refusal('not-found')
    const stages = from.stages.map(({ kind, name, lines }) => ({
      kind,
      name,
      lines: lines.map(({ pctFlour, ingredient }) => ({ pctFlour, ingredientId: ingredient.id })),
    }))
    const { versionId, number } = await addDraft(tx, {
      from,
      reason: input.reason,
      stages,
      draftedById: actor.personId,
      now,
    })
    return {
      value: { formulaId, versionId },
      audit: {
        target: versionId,
        after: { formula: from.formula.name, version: number, from: from.number },
        reason: input.reason,
      },
    }
  },
})
