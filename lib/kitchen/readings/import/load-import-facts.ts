import 'server-only'
import type { Db, Tx } from '../../../db/client'
import { knowsKey } from '../../key/knows-key'
import { Refusal } from '../../refusal'
import { isKeyOpen } from '../../trials/rules'
import { countToSettle } from '../count-to-settle'
import { loadRangeFacts } from '../load-range-facts'
import { measuresToRead } from '../measures-to-read'
import { unitsOfBase } from '../units-of-base'

export type ImportFacts = Awaited<ReturnType<typeof loadImportFacts>>
export type ImportBatch = ImportFacts['batches'][number]

/** Everything that a file of readings is read against: the trial, its doughs, what can be read, what is there. Refuses: not-found. */
export async function loadImportFacts(from: Db | Tx, bakeryId: string, trialId: string, personId: string) {
  const trial = await from.trial.findUnique({
    where: { bakeryId_id: { bakeryId, id: trialId } },
    select: {
      id: true,
      number: true,
      state: true,
      planHash: true,
      question: true,
      createdAt: true,
      mixingDays: true,
      piecesPerBatch: true,
      factorName: true,
      factorLevels: true,
      measureId: true,
      arms: { select: { position: true, name: true }, orderBy: { position: 'asc' } },
    },
  })
  if (!trial) throw new Refusal('not-found')
  const { timeZone } = await from.bakery.findUniqueOrThrow({ where: { bakeryId }, select: { timeZone: true } })
  const rows = await from.batch.findMany({
    where: { bakeryId, trialId, kind: 'dough' },
    select: {
      id: true,
      code: true,
      state: true,
      plannedOrder: true,
      piecesMade: true,
      piecesGood: true,
      begunAt: true,
      revision: true,
      arm: { select: { position: true } },
      mixingDay: { select: { number: true } },
    },
    orderBy: [{ mixingDay: { number: 'asc' } }, { plannedOrder: 'asc' }],
  })
  const seen = new Map<string, number>()
  const batches = rows.map(({ arm, mixingDay, ...batch }) => {
    const key = `${mixingDay.number} ${arm.position}`
    /** Which of the arm's doughs of that day it is, in the drawn order. */
    const number = (seen.get(key) ?? 0) + 1
    seen.set(key, number)
    return { ...batch, arm: arm.position, dayNumber: mixingDay.number, number }
  })
  const readings = await from.reading.findMany({
    where: { bakeryId, trialId },
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
      supersedesId: true,
      receivedAt: true,
      plausibleLeast: true,
      plausibleMost: true,
    },
  })
  const measures = (await measuresToRead(from, bakeryId)).map((measure) => ({
    ...measure,
    units: unitsOfBase(measure.unit),
  }))
  const ranges = await loadRangeFacts(from, bakeryId, { trialId }, measures)
  const toSettle = await countToSettle(from, bakeryId, trialId)
  const { planHash } = trial
  return {
    trial,
    timeZone,
    batches,
    readings,
    measures,
    ranges,
    toSettle,
    /** Whether who imports may know which dough a code stands for. */
    knowsKey: isKeyOpen(trial.state) || (await knowsKey(from, { bakeryId, trialId, planHash, personId })),
  }
}
