import 'server-only'
import { command } from '../command'
import { Refusal } from '../refusal'
import { staleRefusal } from '../stale'
import { changeDraftInput } from './change-draft.input'
import { contentAsItIsNow } from './content-as-shown'
import { lockFormulaOfVersion } from './lock-formula'
import { mustBeChangeable } from './must-be-changeable'
import { mustMakeAFormula } from './must-make-a-formula'
import { processColumns } from './process-columns'
import { readVersion } from './read-version'
import { clearStages, writeStages } from './write-content'

/**
 * Changes a draft that nobody has signed yet, whole. Who changes it is from then on the one who drafted it, so that
 * nobody rewrites a colleague's draft and then signs it as its second person.
 * Refuses: not-found, signed, discarded, drafted-from-trial, stale, wrong-choice and ingredient-ended at a line, flour-short, flour-over.
 */
export const changeDraft = command({
  name: 'formulas.change-draft',
  input: changeDraftInput,
  right: 'draft-formula',
  async run({ tx, actor, input }) {
    const { versionId, seenRevision, reason, stages, ...content } = input
    const { bakeryId } = actor
    const formulaId = await lockFormulaOfVersion(tx, bakeryId, versionId)
    const before = await readVersion(tx, bakeryId, versionId)
    if (!before) throw new Refusal('not-found')
    mustBeChangeable(before)
    const { count } = await tx.formulaVersion.updateMany({
      where: { bakeryId, id: versionId, revision: seenRevision, signedAt: null, contentHash: null, discardedAt: null },
      data: { reason, ...processColumns(content), draftedById: actor.personId, revision: { increment: 1 } },
    })
    if (count !== 1) throw await staleRefusal(tx, actor, versionId)
    await mustMakeAFormula(tx, bakeryId, stages)
    await clearStages(tx, bakeryId, versionId)
    await writeStages(tx, bakeryId, versionId, stages)
    const after = await readVersion(tx, bakeryId, versionId)
    if (!after) throw new Refusal('not-found')
    return {
      value: { formulaId, versionId },
      audit: {
        target: versionId,
        before: contentAsItIsNow(before).document,
        after: contentAsItIsNow(after).document,
        reason,
      },
    }
  },
})
