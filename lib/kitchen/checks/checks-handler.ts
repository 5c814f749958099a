import 'server-only'
import { z } from 'zod'
import { entryHandler } from '../intake/entry-handler'
import { checkContentText } from './check-content.input'
import { loadCheckFacts, type CheckFacts, type CheckRow } from './check-facts'
import { judgeCheck } from './judge-check'
import { logCheckInput, type CheckEntry } from './log-check.input'

/** Checks of scales, thermometers and volume gauges, from outside. None is ever kept aside: two of one day both stand. */
export const checksHandler = entryHandler<CheckEntry, CheckFacts, CheckRow>({
  kinds: { check: { input: logCheckInput, right: 'log-reading', answer: z.strictObject({}) } },
  textOf: checkContentText,
  load: loadCheckFacts,
  judge(entry, facts, by) {
    const verdict = judgeCheck(entry, facts, by)
    if (verdict.outcome === 'again') return { outcome: 'again', about: {} }
    return { outcome: 'ready', row: verdict.row, at: null, about: {}, note: verdict.note }
  },
  note(facts, { id, contentHash }) {
    facts.hashes.set(id, contentHash)
  },
  noteAside() {
    throw new Error('no check is kept aside')
  },
  async keep(tx, rows) {
    await tx.equipmentCheck.createMany({ data: [...rows] })
  },
  held: (from, bakeryId, ids) =>
    from.equipmentCheck.findMany({ where: { bakeryId, id: { in: ids } }, select: { id: true, contentHash: true } }),
  whyAside: {},
})
