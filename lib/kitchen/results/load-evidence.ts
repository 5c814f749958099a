import 'server-only'
import type { Db, Tx } from '../../db/client'
import { Refusal } from '../refusal'
import { isMixingWater, type MixedLine } from './dough-as-mixed'
import { countToSettle } from '../readings/count-to-settle'
import { everyMeasure } from '../readings/measures-to-read'
import { judgeReadings, sealNow } from './judge-readings'
import type { ConditionCode, DeclaredTrial, MeasuredBatch } from './trial-facts'

const nothingRead = {
  pieces: [],
  conditions: { 'dough-temp': null, 'proof-time': null, 'water-added': null } satisfies Record<ConditionCode, null>,
}

/** A trial as its result needs it, with what is missing or odd of it, without anything of costs. @throws Refusal 'not-found' */
export async function loadEvidence(from: Db | Tx, bakeryId: string, trialId: string) {
  const [trial, seal, measures, toSettle] = await Promise.all([
    readTrial(from, bakeryId, trialId),
    sealNow(from, bakeryId, trialId),
    everyMeasure(from, bakeryId),
    countToSettle(from, bakeryId, trialId),
  ])
  if (!trial) throw new Refusal('not-found')
  const { arms, batches, factorName, factorLevels, bakery, ...header } = trial
  const { figures, gaps } = await judgeReadings(from, {
    bakeryId,
    seal,
    trial,
    measures,
    measured: batches.filter(({ state }) => state === 'measured'),
    toSettle,
  })
  const declared: DeclaredTrial = {
    kind: trial.kind,
    state: trial.state,
    measure: trial.measure,
    margin: trial.margin,
    marginUnit: trial.marginUnit,
    confidencePct: trial.confidencePct,
    arms: arms.map(({ position, name, lines }) => ({ position, name, plannedWaterG: plannedWater(lines) })),
    mixingDays: trial.mixingDays,
    batchesPerArm: trial.batchesPerArm,
    factor: factorName !== null && factorLevels.length > 1 ? { name: factorName, levels: factorLevels } : null,
  }
  const measured = batches.map(
    ({ arm, mixingDay, ...batch }): MeasuredBatch => ({
      ...batch,
      arm: arm.position,
      day: mixingDay.number,
      ...(figures.get(batch.id) ?? nothingRead),
    }),
  )
  return { header, declared, batches: measured, arms, timeZone: bakery.timeZone, gaps }
}

function readTrial(from: Db | Tx, bakeryId: string, trialId: string) {
  return from.trial.findUnique({
    where: { bakeryId_id: { bakeryId, id: trialId } },
    select: {
      id: true,
      number: true,
      kind: true,
      state: true,
      question: true,
      margin: true,
      marginUnit: true,
      confidencePct: true,
      mixingDays: true,
      batchesPerArm: true,
      piecesPerBatch: true,
      factorName: true,
      factorLevels: true,
      closedAt: true,
      closedWhy: true,
      revision: true,
      measure: { select: { id: true, code: true, name: true, unit: true, digits: true, level: true, direction: true } },
      formula: { select: { id: true, name: true } },
      controlVersion: { select: { id: true, number: true, contentHash: true } },
      planHash: true,
      bakery: { select: { timeZone: true } },
      decisions: {
        where: { verdict: 'approved' },
        orderBy: { at: 'desc' },
        take: 1,
        select: { at: true, personName: true, byProposer: true, byCoAuthor: true },
      },
      arms: {
        orderBy: { position: 'asc' },
        select: {
          id: true,
          position: true,
          name: true,
          lines: {
            orderBy: { position: 'asc' },
            select: {
              ingredientId: true,
              controlMassG: true,
              weighedG: true,
              ingredient: { select: { name: true, kind: true } },
              stage: { select: { kind: true } },
            },
          },
        },
      },
      mixDays: { orderBy: { number: 'asc' }, select: { number: true, day: true } },
      batches: {
        where: { kind: 'dough' },
        orderBy: [{ mixingDay: { number: 'asc' } }, { plannedOrder: 'asc' }],
        select: {
          id: true,
          code: true,
          plannedOrder: true,
          state: true,
          stateWhy: true,
          begunAt: true,
          piecesMade: true,
          piecesGood: true,
          arm: { select: { position: true } },
          mixingDay: { select: { number: true } },
        },
      },
    },
  })
}

function plannedWater(lines: readonly MixedLine[]): number | null {
  const water = lines.filter(isMixingWater)
  return water.length === 0 ? null : water.reduce((sum, { weighedG }) => sum + weighedG, 0)
}
