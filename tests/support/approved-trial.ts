import { randomUUID } from 'node:crypto'
import { v7 as uuid } from 'uuid'
import { db } from '../../lib/db/client'
import type { Allergen, IngredientKind } from '../../lib/db/generated/enums'
import { testNow, type TestBakery } from './bakery'
import { planOfRows } from './plan-of-rows'

export type ApprovedTrial = {
  trialId: string
  formulaId: string
  versionId: string
  /** By position; 0 is the control. */
  armIds: string[]
  /** In the order in which they are to be baked. */
  batches: {
    batchId: string
    code: string
    armId: string
    day: number
    plannedOrder: number
    cleanDownBefore: boolean
  }[]
  /** Measures by their code. */
  measures: Record<string, string>
}

type Shape = {
  /** Number of arms with the control. The last one brings milk, when there is more than one. */
  arms?: number
  days?: number
  /** On each mixing day. */
  batchesPerArm?: number
  pieces?: number
  /** A factor within batches, with its levels. */
  factor?: { name: string; levels: string[] }
  /** Whether its plan says that what the control has not is a dose. */
  isDosed?: boolean
  /** True to leave it proposed: nobody has decided on its plan. */
  isUndecided?: boolean
  /** The mixer that its plan names. */
  mixerId?: string
  now?: Date
}

/**
 * An approved trial, ready to be baked, put into the database row by row: a signed white-bread formula, its arms with
 * their lines, mixing days and batches. The doughs of a day come arm by arm, and the first one of the second day and
 * of every later one asks for a clean-down, because milk was in the bowl before.
 */
export async function makeApprovedTrial(bakery: TestBakery, shape: Shape = {}): Promise<ApprovedTrial> {
  const {
    arms = 2,
    days = 1,
    batchesPerArm = 1,
    pieces = 4,
    factor,
    isDosed,
    isUndecided = false,
    mixerId,
    now = testNow,
  } = shape
  const { bakeryId } = bakery
  const key = randomUUID().slice(0, 8)
  const proposedById = bakery.head.personId
  const hash = 'a'.repeat(64)

  const addIngredient = async (name: string, kind: IngredientKind, allergens: Allergen[]) => {
    const id = uuid()
    await db().ingredient.create({
      data: {
        bakeryId,
        id,
        name: `${name} ${key}`,
        kind,
        labelName: name,
        allergens,
        allergensCheckedAt: now,
        dustCaution: kind === 'flour',
        note: '',
        revision: 1,
        createdAt: now,
      },
    })
    return id
  }
  const flour = await addIngredient('Wheat flour', 'flour', ['gluten'])
  const water = await addIngredient('Water', 'water', [])
  const salt = await addIngredient('Salt', 'salt', [])
  const yeast = await addIngredient('Yeast', 'leaven', [])
  const milkPowder = await addIngredient('Milk powder', 'dairy', ['milk'])

  const [formulaId, versionId, stageId] = [uuid(), uuid(), uuid()]
  await db().formula.create({ data: { bakeryId, id: formulaId, name: `White tin ${key}`, createdAt: now } })
  await db().formulaVersion.create({
    data: {
      bakeryId,
      id: versionId,
      formulaId,
      number: 1,
      reason: 'As it is baked now.',
      scalingMassG: 480,
      pieces,
      doughLossPct: 2,
      doughTempC: 26,
      mixTimeS: 600,
      bulkTimeS: 2700,
      proofTimeS: 3300,
      bakeTempC: 220,
      bakeTimeS: 1800,
      method: 'Mix, rest, scale, mould, proof, bake.',
      draftedById: proposedById,
      createdAt: now,
      revision: 1,
    },
  })
  await db().formulaStage.create({
    data: { bakeryId, id: stageId, versionId, position: 0, kind: 'final_dough', name: 'Final dough' },
  })
  const control = [
    { ingredientId: flour, pctFlour: 100 },
    { ingredientId: water, pctFlour: 62 },
    { ingredientId: salt, pctFlour: 1.8 },
    { ingredientId: yeast, pctFlour: 1.2 },
  ]
  await db().formulaLine.createMany({
    data: control.map((line, position) => ({ bakeryId, id: uuid(), versionId, stageId, position, ...line })),
  })
  await db().formulaVersion.update({
    where: { bakeryId_id: { bakeryId, id: versionId } },
    data: { contentText: '{}', contentHash: hash, signedAt: now, effectiveAt: now },
  })

  const ofBakery = await db().measure.findMany({ where: { bakeryId }, select: { id: true, code: true } })
  const measures = Object.fromEntries(ofBakery.map(({ id, code }) => [code ?? id, id]))
  const trialId = uuid()
  const trials = await db().trial.count({ where: { bakeryId } })
  await db().trial.create({
    data: {
      bakeryId,
      id: trialId,
      number: trials + 1,
      kind: 'gain',
      state: 'proposed',
      question: 'Does milk powder make the white tin larger?',
      formulaId,
      controlVersionId: versionId,
      measureId: measures['specific-volume'] ?? '',
      margin: 5,
      marginUnit: 'pct',
      confidencePct: 95,
      holdsFor: 'any_day',
      blinded: [],
      mixingDays: days,
      batchesPerArm,
      piecesPerBatch: pieces,
      heldTotals: ['dough_mass'],
      factorName: factor?.name ?? null,
      factorLevels: factor?.levels ?? [],
      ...(mixerId === undefined ? {} : { mixerId }),
      flourTempC: 20,
      roomTempC: 22,
      tapTempC: 12,
      note: '',
      seed: 'fixture',
      proposedById,
      createdAt: now,
      proposedAt: now,
      planText: '{}',
      planHash: hash,
      revision: 1,
    },
  })

  const flourMassG = (pieces * 480) / 1.65
  const armIds = Array.from({ length: arms }, () => uuid())
  for (const [position, armId] of armIds.entries()) {
    await db().arm.create({
      data: {
        bakeryId,
        id: armId,
        trialId,
        position,
        name: position === 0 ? 'Control' : `With ${position} % milk powder`,
        onTop: false,
      },
    })
    const added = position > 0 ? [{ ingredientId: position === arms - 1 ? milkPowder : salt, pctFlour: position }] : []
    await db().armLine.createMany({
      data: [...control, ...added].map(({ ingredientId, pctFlour }, place) => {
        const massG = (flourMassG * pctFlour) / 100
        return {
          bakeryId,
          id: uuid(),
          armId,
          position: place,
          stageId,
          ingredientId,
          controlMassG: place < control.length ? massG : 0,
          massG,
          weighedG: Math.round(massG * 10) / 10,
        }
      }),
    })
  }

  const batches: ApprovedTrial['batches'] = []
  for (let day = 1; day <= days; day++) {
    const mixingDayId = uuid()
    await db().mixingDay.create({ data: { bakeryId, id: mixingDayId, trialId, number: day, day: null } })
    const ofDay = armIds.flatMap((armId) => Array.from({ length: batchesPerArm }, () => armId))
    for (const [at, armId] of ofDay.entries()) {
      const batch = {
        batchId: uuid(),
        code: String(101 + batches.length * 7),
        armId,
        day,
        plannedOrder: at + 1,
        cleanDownBefore: day > 1 && at === 0,
      }
      batches.push(batch)
      await db().batch.create({
        data: {
          bakeryId,
          id: batch.batchId,
          trialId,
          kind: 'dough',
          armId,
          mixingDayId,
          plannedOrder: batch.plannedOrder,
          code: batch.code,
          cleanDownBefore: batch.cleanDownBefore,
          state: 'waiting',
          revision: 1,
        },
      })
    }
  }
  const drawn = batches.map(({ code, day, plannedOrder, armId }) => ({
    code,
    day,
    place: plannedOrder,
    arm: armIds.indexOf(armId),
  }))
  await db().trial.update({
    where: { bakeryId_id: { bakeryId, id: trialId } },
    data: await planOfRows(bakeryId, trialId, drawn, isDosed),
  })
  if (!isUndecided)
    await db().trial.update({ where: { bakeryId_id: { bakeryId, id: trialId } }, data: { state: 'approved' } })
  return { trialId, formulaId, versionId, armIds, batches, measures }
}
