import { randomUUID } from 'node:crypto'
import { afterAll, beforeEach, beforeAll, describe, expect, it } from 'vitest'
import { v7 as uuid } from 'uuid'
import { db } from '@/lib/db/client'
import type { AnswerOf } from '@/lib/kitchen/query'
import { logReading } from '@/lib/kitchen/readings/log-reading'
import { beginBatch } from '@/lib/kitchen/shifts/begin-batch'
import { getBatch } from '@/lib/kitchen/shifts/get-batch'
import { decidePlan } from '@/lib/kitchen/trials/decide-plan'
import { draftTrial } from '@/lib/kitchen/trials/draft-trial'
import { getPlan } from '@/lib/kitchen/trials/get-plan'
import { proposePlan } from '@/lib/kitchen/trials/propose-plan'
import type { EquipmentKind } from '@/lib/db/generated/enums'
import { makeBakery, refusalOf, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { freshDatabase, type FreshDatabase } from '../../support/database'
import { makeTrialStores, trialContentOf, type TrialStores } from '../../support/trials'
import { openTheKey } from '../../support/open-the-key'

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
  await db().equipment.create({
    data: {
      bakeryId: of.bakeryId,
      id,
      kind,
      name: `${kind} ${id.slice(0, 4)}`,
      note: '',
      revision: 1,
      createdAt: testNow,
      ...facts,
    },
  })
  return id
}

async function approve(tapTempC = 12, more: object = {}) {
  const content = { ...trialContentOf(stores), tapTempC, ...more }
  const { trialId } = valueOf(await draftTrial.call(bakery.early.caller, { content }))
  const proposed = valueOf(await proposePlan.call(bakery.early.caller, { trialId, seenRevision: 1 }))
  valueOf(
    await decidePlan.call(bakery.head.caller, {
      trialId,
      seenRevision: proposed.revision,
      planHash: proposed.planHash,
      verdict: 'approved',
      note: '',
    }),
  )
  return trialId
}

/** What the batch's page says of its mixing. */
const mixedBy = ({ key }: AnswerOf<typeof getBatch>) => {
  if (key?.mixing.outcome !== 'read') throw new Error('the plan cannot be read')
  return key.mixing
}
const sheets = async (trialId: string) => (await openTheKey(bakery.early.caller, trialId)).arms

describe('what is weighed', () => {
  it('is the same on the plan, the sheet and the batch’s page', async () => {
    const trialId = await approve()
    const { plan } = valueOf(await getPlan.call(bakery.early.caller, { trialId }))
    const arms = await sheets(trialId)
    const batches = await db().batch.findMany({
      where: { bakeryId: bakery.bakeryId, trialId },
      select: { id: true, arm: { select: { position: true } } },
    })
    expect(batches.length).toBe(9)
    for (const { id, arm } of batches) {
      const shown = mixedBy(valueOf(await getBatch.call(bakery.early.caller, { batchId: id })))
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
    const scales = new Map(
      malt!.toWeigh.stages.flatMap(({ lines }) => lines.map(({ ingredientId, scale }) => [ingredientId, scale?.id])),
    )
    // Malt at 0.6 % of some 2 kg flour is 12 g: on the bench scale (1 g, repeats ± 0.5 g) that is ± 13 %.
    expect(scales.get(stores.ids.malt)).toBe(fine)
    expect(scales.get(stores.ids.flour)).toBe(stores.scaleId)
    expect(malt!.toWeigh.hasSeveralScales).toBe(true)
  })

  it('stays as it was approved when a scale is added or taken out of use', async () => {
    const trialId = await approve()
    const before = await sheets(trialId)
    await equip('scale', { resolutionG: 0.01, mostG: 600 })
    await db().equipment.updateMany({
      where: { bakeryId: bakery.bakeryId, id: stores.scaleId },
      data: { endedAt: testNow },
    })
    expect(await sheets(trialId)).toEqual(before)
  })

  it('is a premix where no scale tells the dose, on the batch’s page too', async () => {
    const trialId = await approve()
    await openTheKey(bakery.early.caller, trialId)
    const batch = await db().batch.findFirstOrThrow({
      where: { bakeryId: bakery.bakeryId, trialId, arm: { position: 1 } },
      select: { id: true },
    })
    const { toWeigh } = mixedBy(valueOf(await getBatch.call(bakery.early.caller, { batchId: batch.id })))
    expect(toWeigh.premixes).toHaveLength(1)
    expect(
      toWeigh.stages.flatMap(({ lines }) => lines.filter(({ isPremix }) => isPremix).map(({ weighedG }) => weighedG)),
    ).toEqual([toWeigh.premixes[0]!.portion.massG])
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
    expect(guessed.way.parts).toMatchObject([
      { from: 'tap', tempC: 4 },
      { from: 'hot', tempC: 55, isUsual: true },
    ])
    await equip('hot_water', { tempC: 48, limitC: 60 })
    const known = await waterOf(4)
    expect(known.way.parts).toMatchObject([
      { from: 'tap', tempC: 4 },
      { from: 'hot', tempC: 48, isUsual: false },
    ])
    // The heat balance of the parts, in grams of the scale, is the water that was asked for within a mark.
    const mixedC = known.way.parts.reduce((sum, { massG, tempC }) => sum + massG * tempC, 0) / known.waterG
    expect(Math.abs(mixedC - known.waterTempC)).toBeLessThan(44 / 2 / known.waterG + 1e-9)
  })

  it('is made of what is in use, and not of the hot tap that was taken out', async () => {
    await equip('hot_water', { tempC: 70, limitC: 65, endedAt: testNow })
    expect((await waterOf(4)).way.parts).toMatchObject([{ from: 'tap' }, { from: 'hot', tempC: 55, isUsual: true }])
  })

  it('is made of chilled water before ice, and of the ice that is there', async () => {
    expect((await waterOf(20)).way.parts).toMatchObject([
      { from: 'tap', tempC: 20 },
      { from: 'ice', tempC: 0, isUsual: true },
    ])
    await equip('ice', { tempC: -18 })
    expect((await waterOf(20)).way.parts).toMatchObject([
      { from: 'tap', tempC: 20 },
      { from: 'ice', tempC: -18, isUsual: false },
    ])
    await equip('chilled_water', { tempC: 2 })
    expect((await waterOf(20)).way.parts).toMatchObject([
      { from: 'chilled', tempC: 2 },
      { from: 'tap', tempC: 20 },
    ])
  })
})

describe('water to consistency', () => {
  it('is said on the batch’s page, planned at the water of its sheet, missing until it is in the book, and asked about when it cannot be', async () => {
    await db().ingredient.update({
      where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: stores.ids.potatoFlakes } },
      data: { bindsWater: true },
    })
    const content = trialContentOf(stores)
    const [first] = content.arms
    const arms = [
      {
        ...first!,
        name: 'flakes',
        onTop: true,
        doses: [{ ...first!.doses[0]!, ingredientId: stores.ids.potatoFlakes, value: 3 }],
      },
    ]
    const trialId = await approve(12, { arms })
    await openTheKey(bakery.early.caller, trialId)
    const pages = await Promise.all(
      [0, 1].map(async (position) => {
        const { id } = await db().batch.findFirstOrThrow({
          where: { bakeryId: bakery.bakeryId, trialId, arm: { position } },
          orderBy: [{ mixingDay: { number: 'asc' } }],
          select: { id: true },
        })
        return valueOf(await getBatch.call(bakery.early.caller, { batchId: id }))
      }),
    )
    expect(pages.map((page) => mixedBy(page).toConsistency)).toEqual([[], ['Potato flakes']])
    for (const page of pages) {
      const { measures } = page
      const { water } = mixedBy(page)
      const field = measures.find(({ code }) => code === 'water-added')!
      if (water.outcome !== 'known') throw new Error('there is mixing water')
      // The sponge has water of its own, which nobody weighs in at the mixer.
      expect(field.planned).toBe(water.waterG)
      // One range for all doughs: its own would tell which it is.
      const amounts = pages.map((each) => {
        const { water: other } = mixedBy(each)
        return other.outcome === 'known' ? other.waterG : Number.NaN
      })
      expect(field.range.least).toBe(Math.floor(Math.min(...amounts) / 2))
      expect(field.range.most).toBe(Math.ceil(Math.max(...amounts) * 1.5))
    }
    const [, next] = pages
    if (!next) throw new Error('there are two')
    const { water } = mixedBy(next)
    valueOf(
      await beginBatch.call(bakery.early.caller, {
        batchId: next.id,
        seenRevision: next.revision,
        cleanDownDone: true,
        ...(next.firstCode === null ? {} : { swapWhy: 'the flakes were ready' }),
      }),
    )
    const missing = async () =>
      valueOf(await getBatch.call(bakery.early.caller, { batchId: next.id })).gaps.flatMap((gap) =>
        gap.kind === 'missing' ? [gap.measure.name] : [],
      )
    expect(await missing()).toContain('Water added')
    const reading = {
      id: uuid(),
      batchId: next.id,
      measureId: stores.measureIds['water-added'],
      repeat: 1,
      value: '99999',
      unit: 'g',
      takenAt: testNow.toISOString(),
    }
    expect(refusalOf(await logReading.call(bakery.early.caller, reading))).toMatch(/^odd-reading/)
    valueOf(
      await logReading.call(bakery.early.caller, {
        ...reading,
        value: String(Math.round(water.outcome === 'known' ? water.waterG + 20 : 0)),
      }),
    )
    expect(await missing()).not.toContain('Water added')
  })
})
