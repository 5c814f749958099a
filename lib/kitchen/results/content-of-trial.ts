import 'server-only'
import type { Db, Tx } from '../../db/client'
import type { Closing } from '../../documents/closing/closing'
import { countToSettle } from '../readings/count-to-settle'
import { everyMeasure } from '../readings/measures-to-read'
import { repairsOfTrial } from '../repairs/repairs-of-trial'
import { foundCausesOfTrial } from './found-causes-of-trial'
import { weighingsOfTrial } from '../weighings/weighings-of-trial'

/** What was weighed, baked and read of a trial: from its rows while it is open, from what was closed after that. */
export type TrialContent = Pick<Closing, 'measures' | 'doughs' | 'readings' | 'weighings' | 'found' | 'repairs'>

/**
 * A trial's doughs in their drawn order, its readings and what was weighed by their ids, and the bakery's measures, as
 * they are at this moment.
 */
export async function contentOfTrial(from: Db | Tx, bakeryId: string, trialId: string) {
  const [measures, batches, readings, keptAside, weighings, found, repairs] = await Promise.all([
    everyMeasure(from, bakeryId),
    from.batch.findMany({
      where: { bakeryId, trialId, kind: 'dough' },
      orderBy: [{ mixingDay: { number: 'asc' } }, { plannedOrder: 'asc' }],
      select: {
        id: true,
        code: true,
        plannedOrder: true,
        state: true,
        stateWhy: true,
        begunAt: true,
        doneAt: true,
        piecesMade: true,
        piecesGood: true,
        arm: { select: { position: true } },
        mixingDay: { select: { number: true } },
      },
    }),
    from.reading.findMany({
      where: { bakeryId, trialId, batch: { kind: 'dough' } },
      orderBy: { id: 'asc' },
      select: {
        id: true,
        batchId: true,
        measureId: true,
        piece: true,
        factorLevel: true,
        repeat: true,
        value: true,
        valueEntered: true,
        unitEntered: true,
        takenAt: true,
        receivedAt: true,
        supersedesId: true,
        reason: true,
        plausibleLeast: true,
        plausibleMost: true,
        person: { select: { id: true, name: true } },
      },
    }),
    countToSettle(from, bakeryId, trialId),
    weighingsOfTrial(from, bakeryId, trialId),
    foundCausesOfTrial(from, bakeryId, trialId),
    repairsOfTrial(from, bakeryId, trialId),
  ])
  return {
    measures: measures.map(({ endedAt, method: _, ...measure }) => ({ ...measure, isEnded: endedAt !== null })),
    doughs: batches.map(({ arm, mixingDay, begunAt, doneAt, ...dough }) => ({
      ...dough,
      arm: arm.position,
      day: mixingDay.number,
      begunAt: begunAt?.toISOString() ?? null,
      doneAt: doneAt?.toISOString() ?? null,
      keptAside: keptAside.get(dough.id) ?? 0,
    })),
    readings: readings.map(({ batchId, measureId, supersedesId, person, takenAt, receivedAt, ...reading }) => ({
      ...reading,
      dough: batchId,
      measure: measureId,
      supersedes: supersedesId,
      by: person,
      takenAt: takenAt.toISOString(),
      receivedAt: receivedAt.toISOString(),
    })),
    weighings,
    found,
    repairs: repairs.map(({ at, ...repair }) => ({ ...repair, at: at.toISOString() })),
  } satisfies TrialContent
}
