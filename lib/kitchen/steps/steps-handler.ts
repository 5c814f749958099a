import 'server-only'
import { z } from 'zod'
import { entryHandler } from '../intake/entry-handler'
import { followSteps } from './follow-steps'
import { judgeStep, whereaboutsAfter } from './judge-step'
import { logStepInput, type StepEntry } from './log-step.input'
import { stepContentText } from './step-content.input'
import { loadStepFacts, type StepFacts, type StepRow } from './step-facts'

/** Steps, from outside. None is ever kept aside: what two say of one step both stands. */
export const stepsHandler = entryHandler<StepEntry, StepFacts, StepRow>({
  kinds: { step: { input: logStepInput, right: 'log-reading', answer: z.strictObject({}) } },
  textOf: stepContentText,
  load: loadStepFacts,
  judge(entry, facts, by) {
    const verdict = judgeStep(entry, facts, by)
    if (verdict.outcome === 'again') return { outcome: 'again', about: {} }
    const { row, note } = verdict
    return { outcome: 'ready', row, at: null, about: {}, note }
  },
  note(facts, row) {
    facts.steps.set(row.id, row)
    const dough = facts.batches.get(row.batchId)
    if (dough) facts.batches.set(row.batchId, { ...dough, ...whereaboutsAfter(row, facts) })
  },
  noteAside() {
    throw new Error('no step is kept aside')
  },
  async keep(tx, rows) {
    await tx.step.createMany({ data: [...rows] })
    await followSteps(tx, rows)
  },
  held: (from, bakeryId, ids) =>
    from.step.findMany({ where: { bakeryId, id: { in: ids } }, select: { id: true, contentHash: true } }),
  whyAside: {},
})
