import 'server-only'
import { v7 as uuid } from 'uuid'
import type { Tx } from '../../db/client'
import type { AsideWhy } from '../../db/generated/enums'
import { formatDateTime } from '../../words/format/date'
import { command } from '../command'
import { judgeEach } from '../judge-each'
import { Refusal, type Problem } from '../refusal'
import { judgeWeighing } from './judge-weighing'
import { keepWeighings } from './keep-weighings'
import { loadWeighingFacts } from './load-weighing-facts'
import type { WeighingEntry } from './log-weighing.input'
import { logWeighingsInput } from './log-weighings.input'
import { noteWeighing, standingAt, type WeighingFacts } from './weighing-facts'

/**
 * Writes what was weighed of lines of one dough: as planned, as the scale showed it, or that nothing of it went in. One
 * that stands already gives way, for a reason, and stays; all go in or none does. The answer says that they are kept, and
 * not whether they are on target.
 * Refuses: not-found, nothing-weighed, trial-not-approved, trial-closed, trial-stopped, batch-not-begun, batch-not-baked,
 * line-not-in-plan, correction-not-yours, odd-weighing, stale, and what is wrong at a field, lots among it.
 */
export const logWeighings = command({
  name: 'weighings.log-weighings',
  input: logWeighingsInput,
  right: 'log-reading',
  async run({ tx, actor, now, input: { batchId, lines, unit, reason, confirmed } }) {
    const entries = lines.flatMap(
      ({ how, mass, seenId, lots, ...place }, at): { at: number; entry: WeighingEntry }[] =>
        how === null
          ? []
          : [
              {
                at,
                entry: {
                  ...place,
                  id: uuid(),
                  batchId,
                  how,
                  takenAt: now.toISOString(),
                  confirmed,
                  ...(how === 'weighed' ? { mass, unit } : { mass }),
                  ...(lots === undefined ? {} : { lots }),
                  ...(seenId === null ? {} : { supersedesId: seenId, reason }),
                },
              },
            ],
    )
    if (entries.length === 0) throw new Refusal('nothing-weighed')
    const facts = await loadWeighingFacts(
      tx,
      actor.bakeryId,
      entries.map(({ entry }) => entry),
    )
    const ready = await judgeEach(
      entries,
      async ({ entry }) => {
        const verdict = judgeWeighing(entry, facts, { actor, now })
        if (verdict.outcome === 'aside') throw await refusalOf(tx, actor.bakeryId, entry, facts, verdict.why)
        if (verdict.outcome !== 'ready') throw new Error('an id that was made just now was there already')
        noteWeighing(facts, verdict.row)
        return verdict
      },
      (problem, { at }) => atLine(problem, at),
    )
    await keepWeighings(
      tx,
      ready.map(({ row }) => row),
    )
    return {
      value: { kept: ready.length },
      audit: { target: batchId, after: { weighed: ready.map(({ note }) => note) } },
    }
  },
})

/** What the whole form has is wrong there, and not at a line. */
function atLine(problem: Problem, at: number): Problem {
  return problem.path === 'reason' || problem.path === 'unit'
    ? problem
    : { ...problem, path: `lines.${at}.${problem.path}` }
}

async function refusalOf(
  tx: Tx,
  bakeryId: string,
  entry: WeighingEntry,
  facts: WeighingFacts,
  why: AsideWhy,
): Promise<Refusal> {
  if (why === 'trial_closed') {
    const trial = facts.batches.get(entry.batchId.toLowerCase())?.trial
    return new Refusal(trial?.state === 'stopped' ? 'trial-stopped' : 'trial-closed')
  }
  const standing = standingAt(facts, {
    batchId: entry.batchId.toLowerCase(),
    stageId: entry.stageId.toLowerCase(),
    ingredientId: entry.ingredientId.toLowerCase(),
    part: entry.part,
  })
  if (!standing) return new Refusal('stale-moved-on')
  const [who, bakery] = await Promise.all([
    tx.person.findUniqueOrThrow({
      where: { bakeryId_id: { bakeryId, id: standing.personId } },
      select: { name: true },
    }),
    tx.bakery.findUniqueOrThrow({ where: { bakeryId }, select: { locale: true, timeZone: true } }),
  ])
  return new Refusal('stale', { who: who.name, at: formatDateTime(standing.receivedAt, bakery) })
}
