import 'server-only'
import { randomUUID } from 'node:crypto'
import { v7 as uuid } from 'uuid'
import { command } from '../command'
import { draftTrialInput } from './draft-trial.input'
import { mustBePlannable } from './must-be-plannable'
import { noteAuthor } from './note-author'
import { columnsOf, summaryOf, writeArms } from './write-content'

/**
 * Writes down a question to bake for: the formula in production now is the control. Nothing is asked of anybody yet.
 * Refuses: faults at the fields; what is another bakery's is not among the choices.
 */
export const draftTrial = command({
  name: 'trials.draft-trial',
  input: draftTrialInput,
  right: 'propose-trial',
  async run({ tx, actor, now, input: { content } }) {
    const { bakeryId } = actor
    const { controlVersionId } = await mustBePlannable(tx, bakeryId, content, now, 'content.')
    // Numbers are given out one after another; other work on the bakery need not wait.
    await tx.$queryRaw`SELECT 1 FROM bakery WHERE bakery_id = ${bakeryId}::uuid FOR NO KEY UPDATE`
    const { _max } = await tx.trial.aggregate({ where: { bakeryId }, _max: { number: true } })
    const number = (_max.number ?? 0) + 1
    const trialId = uuid()
    await tx.trial.create({
      data: {
        bakeryId,
        id: trialId,
        number,
        state: 'draft',
        ...columnsOf(content),
        controlVersionId,
        // The one that counts is drawn when the plan is proposed.
        seed: randomUUID(),
        proposedById: actor.personId,
        createdAt: now,
        revision: 1,
      },
    })
    await noteAuthor(tx, { bakeryId, trialId, personId: actor.personId }, now)
    await writeArms(tx, bakeryId, trialId, content.arms)
    return { value: { trialId, number }, audit: { target: trialId, after: { number, ...summaryOf(content) } } }
  },
})
