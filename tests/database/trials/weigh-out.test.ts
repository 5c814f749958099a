import { randomUUID } from 'node:crypto'
import { afterAll, beforeEach, beforeAll, describe, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { getBatch } from '@/lib/kitchen/shifts/get-batch'
import { decidePlan } from '@/lib/kitchen/trials/decide-plan'
import { draftTrial } from '@/lib/kitchen/trials/draft-trial'
import { getPlan } from '@/lib/kitchen/trials/get-plan'
import { getWeighOut } from '@/lib/kitchen/trials/get-weigh-out'
import { proposePlan } from '@/lib/kitchen/trials/propose-plan'
import type { EquipmentKind } from '@/lib/db/generated/enums'
import { makeBakery, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { freshDatabase, type FreshDatabase } from '../../support/database'
import { makeTrialStores, trialContentOf, type TrialStores } from '../../support/trials'

let database: FreshDatabase
let bakery: TestBakery
let stores: TrialStores

beforeAll(async () => {
  database = await freshDatabase()
})
beforeEach(async () => {
  bakery = await makeBakery(`Mill Row ${randomUUID().slice(0, 6)}`)
  stores = await makeTrialStores(bakery)
})
afterAll(() => database.drop())

async function equip(kind: EquipmentKind, facts: object, of = bakery): Promise<string> {
  const id = randomUUID()
  await db().equipment.create({ data: { bakeryId: of.bakeryId, id, kind, name: `${kind} ${id.slice(0, 4)}`, note: '', revision: 1, createdAt: testNow, ...facts } })
  return id
}

async function approve(tapTempC = 12) {
  const content = { ...trialContentOf(stores), tapTempC }
  const { trialId } = valueOf(await draftTrial.call(bakery.early.caller, { content }))
  const proposed = valueOf(await proposePlan.call(bakery.early.caller, { trialId, seenRevision: 1 }))
  valueOf(await decidePlan.call(bakery.head.caller, { trialId, seenRevision: proposed.revision, planHash: proposed.planHash, verdict: 'approved', note: '', language: 'en' }))
  return trialId
}

const sheets = async (trialId: string) => valueOf(await getWeighOut.call(bakery.early.caller, { trialId })).arms

describe('what is weighed', () => {
  it('is the same on the plan, the sheet and the batch’s page', async () => {
    const trialId = await approve()
    const { plan } = valueOf(await getPlan.call(bakery.early.caller, { trialId }))
    const arms = await sheets(trialId)
    const batches = await db().batch.findMany({ where: { bakeryId: bakery.bakeryId, trialId }, select: { id: true, arm: { select: { position: true } } } })
    expect(batches.length).toBe(9)
    for (const { id, arm } of batches) {
      const shown = valueOf(await getBatch.call(bakery.early.caller, { batchId: id }))
      expect(shown.toWeigh).toEqual(arms[arm.position]!.toWeigh)
      expect(shown.toWeigh).toEqual(plan.arms[arm.position]!.toWeigh)
      expect(shown.water).toEqual(arms[arm.position]!.water)
    }
  })

  it('goes on the scale that can weigh it, of those in use and of this bakery', async () => {
    const neighbour = await makeBakery(`Next Door ${randomUUID().slice(0, 6)}`)
    await equip('scale', { resolutionG: 0.001, mostG: 500 }, neighbour)
    await equip('scale', { resolutionG: 0.001, mostG: 500, endedAt: testNow })
    const fine = await equip('scale', { resolutionG: 0.01, mostG: 600 })
    const [, malt] = await sheets(await approve())
    const scales = new Map(malt!.toWeigh.stages.flatMap(({ lines }) => lines.map(({ ingredientId, scale }) => [ingredientId, scale?.id])))
    // Malt at 0.6 % of some 2 kg flour is 12 g: on the bench scale (1 g, repeats ± 0.5 g) that is ± 13 %.
    expect(scales.get(stores.ids.malt)).toBe(fine)
    expect(scales.get(stores.ids.flour)).toBe(stores.scaleId)
    expect(malt!.toWeigh.hasSeveralScales).toBe(true)
  })

  it('stays as it was approved when a scale is added or taken out of use', async () => {
    const trialId = await approve()
    const before = await sheets(trialId)
    await equip('scale', { resolutionG: 0.01, mostG: 600 })
    await db().equipment.updateMany({ where: { bakeryId: bakery.bakeryId, id: stores.scaleId }, data: { endedAt: testNow } })
    expect(await sheets(trialId)).toEqual(before)
  })

  it('is a premix where no scale tells the dose, on the batch’s page too', async () => {
    const trialId = await approve()
    const batch = await db().batch.findFirstOrThrow({ where: { bakeryId: bakery.bakeryId, trialId, arm: { position: 1 } }, select: { id: true } })
    const { toWeigh } = valueOf(await getBatch.call(bakery.early.caller, { batchId: batch.id }))
    expect(toWeigh.premixes).toHaveLength(1)
    expect(toWeigh.stages.flatMap(({ lines }) => lines.filter(({ isPremix }) => isPremix).map(({ weighedG }) => weighedG))).toEqual([toWeigh.premixes[0]!.portion.massG])
  })
})

describe('mixing water', () => {
  const waterOf = async (tapTempC: number) => {
    const [control] = await sheets(await approve(tapTempC))
    if (control?.water.outcome !== 'known') throw new Error('the control has plain water')
    return control.water
  }

  it('is made of what the equipment says, and what nobody wrote down is said to be usual', async () => {
    const guessed = await waterOf(4)
    expect(guessed.way.parts).toMatchObject([{ from: 'tap', tempC: 4 }, { from: 'hot', tempC: 55, isUsual: true }])
    await equip('hot_water', { tempC: 48, limitC: 60 })
    const known = await waterOf(4)
    expect(known.way.parts).toMatchObject([{ from: 'tap', tempC: 4 }, { from: 'hot', tempC: 48, isUsual: false }])
    // The heat balance of the parts, in grams of the scale, is the water that was asked for within a mark.
    const mixedC = known.way.parts.reduce((sum, { massG, tempC }) => sum + massG * tempC, 0) / known.waterG
    expect(Math.abs(mixedC - known.waterTempC)).toBeLessThan(44 / 2 / known.waterG + 1e-9)
  })

  it('is made of what is in use, and not of the hot tap that was taken out', async () => {
    await equip('hot_water', { tempC: 70, limitC: 65, endedAt: testNow })
    expect((await waterOf(4)).way.parts).toMatchObject([{ from: 'tap' }, { from: 'hot', tempC: 55, isUsual: true }])
  })

  it('is made of chilled water before ice, and of the ice that is there', async () => {
    expect((await waterOf(20)).way.parts).toMatchObject([{ from: 'tap', tempC: 20 }, { from: 'ice', tempC: 0, isUsual: true }])
    await equip('ice', { tempC: -18 })
    expect((await waterOf(20)).way.parts).toMatchObject([{ from: 'tap', tempC: 20 }, { from: 'ice', tempC: -18, isUsual: false }])
    await equip('chilled_water', { tempC: 2 })
    expect((await waterOf(20)).way.parts).toMatchObject([{ from: 'chilled', tempC: 2 }, { from: 'tap', tempC: 20 }])
  })
})
