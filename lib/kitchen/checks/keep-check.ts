import 'server-only'
import { v7 as uuid } from 'uuid'
import { command } from '../command'
import { loadCheckFacts } from './check-facts'
import { judgeCheck } from './judge-check'
import { keepCheckInput } from './log-check.input'

/** Keeps a check of a scale, a thermometer or a volume gauge from the desk. Refuses: not-found, and what is wrong at a field. */
export const keepCheck = command({
  name: 'checks.keep-check',
  input: keepCheckInput,
  right: 'log-reading',
  async run({ tx, actor, now, input }) {
    const entry = { ...input, id: uuid(), takenAt: now.toISOString() }
    const verdict = judgeCheck(entry, await loadCheckFacts(tx, actor.bakeryId, [entry]), { actor, now })
    if (verdict.outcome !== 'ready') throw new Error('an id that was made just now was there already')
    await tx.equipmentCheck.create({ data: verdict.row })
    return {
      value: { checkId: verdict.row.id, isGood: verdict.row.isGood },
      audit: { target: verdict.row.equipmentId, after: verdict.note },
    }
  },
})
