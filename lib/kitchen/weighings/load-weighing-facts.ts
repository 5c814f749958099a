import 'server-only'
import { groupBy } from '../../calc/group-by'
import type { Tx } from '../../db/client'
import { readPlan } from '../../documents/plan/read-plan'
import { lockBatches } from '../readings/lock-batches'
import { linesOfPlan } from './lines-of-plan'
import type { WeighingEntry } from './log-weighing.input'
import { loadTypedCodes } from './typed-codes'
import type { WeighingFacts } from './weighing-facts'

/** Locks the batches that entries are of and loads what they are judged by. What is not of this bakery is not there. */
export async function loadWeighingFacts(
  tx: Tx,
  bakeryId: string,
  entries: readonly WeighingEntry[],
): Promise<WeighingFacts> {
  const ids = lowerOf(entries.map(({ id }) => id))
  const named = lowerOf(entries.flatMap(({ id, supersedesId }) => [id, supersedesId ?? id]))
  const batches = await lockBatches(tx, bakeryId, lowerOf(entries.map(({ batchId }) => batchId)), [])
  const [trials, weighings, lots, typed, aside] = await Promise.all([
    tx.trial.findMany({
      where: { bakeryId, id: { in: batches.map(({ trialId }) => trialId) } },
      select: { id: true, planText: true, planHash: true },
    }),
    tx.weighing.findMany({
      where: { bakeryId, OR: [{ batchId: { in: batches.map(({ id }) => id) } }, { id: { in: ids } }] },
      select: {
        id: true,
        trialId: true,
        batchId: true,
        stageId: true,
        ingredientId: true,
        part: true,
        personId: true,
        takenAt: true,
        receivedAt: true,
        contentHash: true,
        supersedesId: true,
      },
    }),
    tx.lot.findMany({
      where: {
        bakeryId,
        id: { in: lowerOf(entries.flatMap((entry) => (entry.lots ?? []).flatMap(({ lotId }) => lotId ?? []))) },
      },
      select: {
        id: true,
        code: true,
        ingredientId: true,
        ingredient: { select: { name: true, allergens: true, allergensCheckedAt: true } },
      },
    }),
    loadTypedCodes(tx, bakeryId, entries),
    tx.entryToSettle.findMany({
      where: { bakeryId, entryId: { in: named } },
      select: { entryId: true, hash: true, why: true, trialId: true, batchId: true },
    }),
  ])
  const corrected = new Set(weighings.map(({ supersedesId }) => supersedesId))
  return {
    batches: new Map(batches.map((batch) => [batch.id, batch])),
    lines: new Map(
      trials.map(({ id, planText, planHash }) => {
        const read = planText === null || planHash === null ? null : readPlan(planText, planHash)
        return [id, read?.outcome === 'read' ? linesOfPlan(read.plan) : []]
      }),
    ),
    weighings: new Map(
      weighings.map(({ supersedesId: _, ...known }) => [known.id, { ...known, isCorrected: corrected.has(known.id) }]),
    ),
    lots: new Map(lots.map(({ id, ...lot }) => [id, lot])),
    typed,
    aside: groupBy(aside, ({ entryId }) => entryId),
  }
}

function lowerOf(ids: readonly string[]): string[] {
  return [...new Set(ids.map((id) => id.toLowerCase()))]
}
