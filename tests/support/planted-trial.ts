import { createHash } from 'node:crypto'
import { v7 as uuid } from 'uuid'
import { db } from '../../lib/db/client'
import type { BatchState, TrialState } from '../../lib/db/generated/enums'
import type { TestBakery } from './bakery'
import { closeAsItIs } from './close-as-it-is'
import { planOfRows } from './plan-of-rows'

export type PlantedDough = {
  arm: number
  day: number
  state?: BatchState
  stateWhy?: string
  piecesGood?: number
  doughTempC?: number
  /** Water that the book says was added. */
  waterG?: number
  /** Loaf weight in g and volume in mL, of each loaf; volumes are read twice. */
  loaves: readonly { massG: number; volumesMl: readonly [number, number] }[]
}

export type PlantedTrial = { trialId: string; batchIds: Map<string, string>; measureIds: Map<string, string> }

/** Prices of a pack of 1 kg in euro, such as no other figure of a page shows. */
export const plantedPrices = { flour: '0.8317', malt: '7.7713' } as const

/** Masses in one dough of the planted arms, g: control, A with 6 g of malt. */
export const plantedMasses = [
  { flour: 1000, water: 600, malt: 0 },
  { flour: 994, water: 600, malt: 6 },
] as const

const hash = (text: string) => createHash('sha256').update(text).digest('hex')

/**
 * An invented trial of malt in a tin loaf, written straight into the tables, past the commands of planning and of the
 * shift: what the result makes of rows is looked at, not how they came about. Control and one arm, larger specific
 * volume is better, 4 % is worth having, 4 loaves a dough.
 */
export async function plantTrial(
  bakery: TestBakery,
  q: { state: TrialState; mixingDays: number; doughs: readonly PlantedDough[]; at: Date },
): Promise<PlantedTrial> {
  const { bakeryId } = bakery
  const { at } = q
  const personId = bakery.head.personId
  const [formulaId, versionId, stageId, trialId] = [uuid(), uuid(), uuid(), uuid()]
  const measures = await db().measure.findMany({ where: { bakeryId }, select: { id: true, code: true } })
  const measureIds = new Map(measures.map(({ id, code }) => [code ?? '', id]))
  const measureId = (code: string) => measureIds.get(code)!

  const ingredients = { flour: uuid(), water: uuid(), malt: uuid() }
  await db().ingredient.createMany({
    data: (['flour', 'water', 'malt'] as const).map((kind) => ({
      bakeryId,
      id: ingredients[kind],
      name: `Planted ${kind} ${trialId.slice(-6)}`,
      kind,
      labelName: kind,
      allergens: [],
      dustCaution: false,
      note: '',
      revision: 1,
      createdAt: at,
    })),
  })
  await db().price.createMany({
    data: (['flour', 'malt'] as const).map((name) => ({
      bakeryId,
      id: uuid(),
      ingredientId: ingredients[name],
      holdsFrom: new Date('2026-01-01'),
      packMassG: 1000,
      packPrice: plantedPrices[name],
      currency: 'EUR',
      supplier: 'Mill',
      enteredById: personId,
      enteredAt: at,
    })),
  })
  await db().formula.create({
    data: { bakeryId, id: formulaId, name: `Planted loaf ${trialId.slice(-6)}`, createdAt: at },
  })
  await db().formulaVersion.create({
    data: {
      bakeryId,
      id: versionId,
      formulaId,
      number: 6,
      reason: 'first',
      scalingMassG: 400,
      pieces: 4,
      doughLossPct: 0,
      doughTempC: 25,
      mixTimeS: 600,
      bulkTimeS: 3600,
      proofTimeS: 3600,
      bakeTempC: 220,
      bakeTimeS: 1800,
      method: '',
      draftedById: personId,
      createdAt: at,
      revision: 1,
    },
  })
  await db().formulaStage.create({
    data: { bakeryId, id: stageId, versionId, position: 0, kind: 'final_dough', name: 'Final dough' },
  })

  const number = 1 + (await db().trial.count({ where: { bakeryId } }))
  await db().trial.create({
    data: {
      bakeryId,
      id: trialId,
      number,
      kind: 'gain',
      state: 'draft',
      question: 'Planted: does malt flour earn its place in the tin loaf?',
      formulaId,
      controlVersionId: versionId,
      measureId: measureId('specific-volume'),
      margin: 4,
      marginUnit: 'pct',
      confidencePct: 95,
      holdsFor: 'any_day',
      blinded: [],
      mixingDays: q.mixingDays,
      batchesPerArm: 1,
      piecesPerBatch: 4,
      heldTotals: [],
      factorLevels: [],
      flourTempC: 20,
      roomTempC: 22,
      tapTempC: 12,
      note: '',
      seed: 'seed',
      proposedById: bakery.early.personId,
      createdAt: at,
      revision: 1,
    },
  })
  const armIds = [uuid(), uuid()]
  await db().arm.createMany({
    data: armIds.map((id, position) => ({
      bakeryId,
      id,
      trialId,
      position,
      name: position === 0 ? 'Planted control' : 'Planted malt 0.6 %',
      onTop: false,
    })),
  })
  await db().armLine.createMany({
    data: armIds.flatMap((armId, arm) =>
      (['flour', 'water', 'malt'] as const).flatMap((name, position) => {
        const massG = plantedMasses[arm]![name]
        return arm === 0 && name === 'malt'
          ? []
          : [
              {
                bakeryId,
                id: uuid(),
                armId,
                position,
                stageId,
                ingredientId: ingredients[name],
                controlMassG: plantedMasses[0][name],
                massG,
                weighedG: massG,
              },
            ]
      }),
    ),
  })
  await db().trial.update({
    where: { bakeryId_id: { bakeryId, id: trialId } },
    data: {
      // Readings come to an open trial only; it is closed below.
      state: q.state === 'closed' ? 'baking' : q.state,
      ...(await planOfRows(
        bakeryId,
        trialId,
        q.doughs.map(({ arm, day }, i) => ({ code: codeOf(i), day, place: arm + 1, arm })),
      )),
      proposedAt: at,
    },
  })

  const days = [...new Set(q.doughs.map(({ day }) => day))]
  const dayIds = new Map(days.map((day) => [day, uuid()]))
  await db().mixingDay.createMany({
    data: days.map((day) => ({
      bakeryId,
      id: dayIds.get(day)!,
      trialId,
      number: day,
      day: new Date(`2026-02-${String(10 + day)}`),
    })),
  })
  const batchIds = new Map(q.doughs.map(({ arm, day }) => [`${day}-${arm}`, uuid()]))
  await db().batch.createMany({
    data: q.doughs.map((dough, i) => ({
      bakeryId,
      id: batchIds.get(`${dough.day}-${dough.arm}`)!,
      trialId,
      kind: 'dough',
      armId: armIds[dough.arm]!,
      mixingDayId: dayIds.get(dough.day)!,
      plannedOrder: dough.arm + 1,
      code: codeOf(i),
      cleanDownBefore: false,
      state: dough.state ?? 'measured',
      stateWhy: dough.stateWhy ?? null,
      piecesMade: 4,
      piecesGood: dough.piecesGood ?? 4,
      begunAt: at,
      revision: 1,
    })),
  })
  const reading = (batchId: string, code: string, piece: number | null, repeat: number, value: number) => ({
    bakeryId,
    id: uuid(),
    trialId,
    batchId,
    piece,
    measureId: measureId(code),
    repeat,
    value,
    valueEntered: String(value),
    unitEntered: 'g',
    personId,
    takenAt: at,
    receivedAt: at,
    contentHash: hash(`${batchId} ${code} ${piece} ${repeat}`),
  })
  await db().reading.createMany({
    data: q.doughs.flatMap((dough) => {
      const batchId = batchIds.get(`${dough.day}-${dough.arm}`)!
      return [
        ...(dough.doughTempC === undefined ? [] : [reading(batchId, 'dough-temp', null, 1, dough.doughTempC)]),
        ...(dough.waterG === undefined ? [] : [reading(batchId, 'water-added', null, 1, dough.waterG)]),
        ...dough.loaves.flatMap(({ massG, volumesMl }, i) => [
          reading(batchId, 'loaf-mass', i + 1, 1, massG),
          reading(batchId, 'loaf-volume', i + 1, 1, volumesMl[0]),
          reading(batchId, 'loaf-volume', i + 1, 2, volumesMl[1]),
        ]),
      ]
    }),
  })
  if (q.state === 'closed') await closeAsItIs(bakery, trialId, at)
  return { trialId, batchIds, measureIds }
}

/** The code of a dough, by its place in the list. */
function codeOf(i: number): string {
  return String(301 + 7 * i)
}
