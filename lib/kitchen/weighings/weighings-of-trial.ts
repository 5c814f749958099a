import 'server-only'
import type { Db, Tx } from '../../db/client'
import type { Closing } from '../../documents/closing/closing'
import { readPlan } from '../../documents/plan/read-plan'
import { linesOfPlan } from './lines-of-plan'

/**
 * What is weighed for the doughs of a trial by its plan, and everything that was written of it, by the ids. Of a plan that
 * cannot be read there are no lines, so nothing is judged; such a trial is not closed either.
 */
export async function weighingsOfTrial(
  from: Db | Tx,
  bakeryId: string,
  trialId: string,
): Promise<NonNullable<Closing['weighings']>> {
  const [trial, entries] = await Promise.all([
    from.trial.findUnique({
      where: { bakeryId_id: { bakeryId, id: trialId } },
      select: { planText: true, planHash: true },
    }),
    from.weighing.findMany({
      where: { bakeryId, trialId },
      orderBy: { id: 'asc' },
      select: {
        id: true,
        batchId: true,
        stageId: true,
        ingredientId: true,
        part: true,
        how: true,
        massG: true,
        massEntered: true,
        unitEntered: true,
        takenAt: true,
        receivedAt: true,
        supersedesId: true,
        reason: true,
        person: { select: { id: true, name: true } },
      },
    }),
  ])
  return {
    lines: linesOfText(trial?.planText ?? null, trial?.planHash ?? null),
    entries: entries.map(({ batchId, stageId, ingredientId, supersedesId, person, takenAt, receivedAt, ...entry }) => ({
      ...entry,
      dough: batchId,
      stage: stageId,
      ingredient: ingredientId,
      supersedes: supersedesId,
      by: person,
      takenAt: takenAt.toISOString(),
      receivedAt: receivedAt.toISOString(),
    })),
  }
}

function linesOfText(text: string | null, hash: string | null) {
  if (text === null || hash === null) return []
  const read = readPlan(text, hash)
  return read.outcome === 'read' ? linesOfPlan(read.plan) : []
}
