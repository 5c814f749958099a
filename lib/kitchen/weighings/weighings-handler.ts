import 'server-only'
import { z } from 'zod'
import { entryHandler } from '../intake/entry-handler'
import { judgeWeighing } from './judge-weighing'
import { keepWeighings, type WeighingRow } from './keep-weighings'
import { loadWeighingFacts } from './load-weighing-facts'
import { logWeighingInput, type WeighingEntry } from './log-weighing.input'
import { weighingContentText } from './weighing-content.input'
import { noteWeighing, type WeighingFacts } from './weighing-facts'

/** What was weighed, from outside. The answer says that it is kept and no more: whether it is on target tells the code. */
export const weighingsHandler = entryHandler<WeighingEntry, WeighingFacts, WeighingRow>({
  kinds: { weighing: { input: logWeighingInput, right: 'log-reading', answer: z.strictObject({}) } },
  textOf: weighingContentText,
  load: loadWeighingFacts,
  judge(entry, facts, by) {
    const verdict = judgeWeighing(entry, facts, by)
    switch (verdict.outcome) {
      case 'ready': {
        const { row, note } = verdict
        return { outcome: 'ready', row, at: { trialId: row.trialId, batchId: row.batchId }, about: {}, note }
      }
      case 'again':
        return { outcome: 'again', about: {} }
      case 'aside': {
        const { why, isAgain, trialId, batchId } = verdict
        return { outcome: 'aside', at: { trialId, batchId }, why, isAgain }
      }
      default:
        return verdict satisfies never
    }
  },
  note: noteWeighing,
  noteAside(facts, entryId, aside) {
    facts.aside.set(entryId, [...(facts.aside.get(entryId) ?? []), aside])
  },
  keep: keepWeighings,
  held: (from, bakeryId, ids) =>
    from.weighing.findMany({ where: { bakeryId, id: { in: ids } }, select: { id: true, contentHash: true } }),
  whyAside: {
    weighing_pkey: 'id_taken',
    weighing_first_once: 'place_taken',
    weighing_superseded_once: 'corrected_meanwhile',
  },
})
