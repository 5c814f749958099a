import 'server-only'
import { command } from '../command'
import { staleRefusal } from '../stale'
import { changeDraftTrialInput } from './change-draft-trial.input'
import { lockTrial } from './lock-trial'
import { mustBePlannable } from './must-be-plannable'
import { noteAuthor } from './note-author'
import { readContent } from './read-content'
import { isSameWork } from './same-work'
import { columnsOf, summaryOf, writeArms } from './write-content'

/**
 * Changes a draft, whole. A plan that was sent back is a draft again. Who changes more than its wording is an author of
 * the trial from then on. Refuses: not-found, stale; faults at the fields.
 */
export const changeDraftTrial = command({
  name: 'trials.change-draft-trial',
  input: changeDraftTrialInput,
  right: 'propose-trial',
  async run({ tx, actor, now, input: { trialId, seenRevision, content } }) {
    const { bakeryId } = actor
    const trial = await lockTrial(tx, bakeryId, trialId)
    const former = await readContent(tx, bakeryId, trialId)
    const { controlVersionId } = await mustBePlannable(tx, bakeryId, content, now, 'content.')
    const { count } = await tx.trial.updateMany({
      where: { bakeryId, id: trialId, state: 'draft', revision: seenRevision },
      data: { ...columnsOf(content), controlVersionId, revision: { increment: 1 } },
    })
    if (count !== 1) throw await staleRefusal(tx, actor, trialId)
    if (!former || !isSameWork(former, content))
      await noteAuthor(tx, { bakeryId, trialId, personId: actor.personId }, now)
    await writeArms(tx, bakeryId, trialId, content.arms)
    return {
      value: { trialId },
      audit: { target: trialId, before: { question: trial.question }, after: summaryOf(content) },
    }
  },
})
