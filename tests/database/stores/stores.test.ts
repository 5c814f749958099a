import { randomUUID } from 'node:crypto'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { verifyRecord } from '@/lib/kitchen/audit/verify-record'
import { changeSettings } from '@/lib/kitchen/people/change-settings'
import { addEquipment } from '@/lib/kitchen/stores/add-equipment'
import { addIngredient } from '@/lib/kitchen/stores/add-ingredient'
import { changeEquipment } from '@/lib/kitchen/stores/change-equipment'
import { changeIngredient } from '@/lib/kitchen/stores/change-ingredient'
import { enterPrice } from '@/lib/kitchen/stores/enter-price'
import { getEquipment } from '@/lib/kitchen/stores/get-equipment'
import { getFormUnits } from '@/lib/kitchen/stores/get-form-units'
import { getIngredient } from '@/lib/kitchen/stores/get-ingredient'
import { listEquipment } from '@/lib/kitchen/stores/list-equipment'
import { listIngredients } from '@/lib/kitchen/stores/list-ingredients'
import { priceOn } from '@/lib/kitchen/stores/price-on'
import { priceThatHolds } from '@/lib/kitchen/stores/rules'
import { seedStores } from '@/seed/stores'
import { callerOf, makeBakery, refusalOf, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { freshDatabase, type FreshDatabase } from '../../support/database'

let database: FreshDatabase
let bakery: TestBakery
let neighbour: TestBakery

beforeAll(async () => {
  database = await freshDatabase()
  bakery = await makeBakery('Mill Row')
  neighbour = await makeBakery('Next Door')
})
afterAll(() => database.drop())

const minutes = (count: number) => new Date(testNow.getTime() + count * 60_000)

const facts = {
  labelName: 'Wheat flour',
  kind: 'flour',
  active: null,
  customary: null,
  allergens: ['gluten'],
  dustCaution: true,
  note: '',
  figures: {
    water: { gPer100G: 13.36, source: 'USDA SR28 NDB 20129' },
    fat: { gPer100G: 1.66, source: 'USDA SR28 NDB 20129' },
  },
}
const newFacts = (name: string) => ({ ...facts, name, allergenCheck: 'checked-now' })

let serial = 0
async function addFlour(to: TestBakery = bakery): Promise<string> {
  return valueOf(await addIngredient.call(to.head.caller, newFacts(`Flour ${++serial}`))).ingredientId
}

const price = (ingredientId: string, holdsFrom: string, packPrice = '18.75') => ({
  ingredientId,
  holdsFrom,
  packMassG: 25_000,
  packPrice,
  supplier: 'Weir Mill',
})

describe('an ingredient', () => {
  it('is kept with every fact, each figure with its source', async () => {
    const { ingredientId } = valueOf(
      await addIngredient.call(bakery.head.caller, {
        ...newFacts('  Malt flour '),
        kind: 'malt',
        active: { name: 'Alpha-amylase', pct: 7 },
        customary: { leastPct: 0.2, mostPct: 1, source: 'A sheet' },
        allergens: ['milk', 'gluten', 'milk'],
      }),
    )
    expect(valueOf(await getIngredient.call(bakery.early.caller, { ingredientId }))).toMatchObject({
      name: 'Malt flour',
      activeName: 'Alpha-amylase',
      activeShare: 0.07,
      customaryLeastPct: 0.2,
      customarySource: 'A sheet',
      allergens: ['gluten', 'milk'],
      allergensCheckedAt: testNow,
      figures: [
        { figure: 'water', gPer100G: 13.36, source: 'USDA SR28 NDB 20129' },
        { figure: 'fat', gPer100G: 1.66, source: 'USDA SR28 NDB 20129' },
      ],
      revision: 1,
    })
  })

  it('has a name of its own within the bakery, and the neighbour may have it too', async () => {
    valueOf(await addIngredient.call(bakery.head.caller, newFacts('Bread flour')))
    expect(refusalOf(await addIngredient.call(bakery.head.caller, newFacts('Bread flour ')))).toBe(
      'invalid name:name-taken',
    )
    valueOf(await addIngredient.call(neighbour.head.caller, newFacts('Bread flour')))
  })

  it('takes one name once when two people send it at the same moment', async () => {
    const tries = await Promise.all(
      [1, 2, 3].map(() => addIngredient.call(bakery.owner.caller, newFacts('Twin flour'))),
    )
    expect(tries.filter((result) => result.ok)).toHaveLength(1)
    expect(await db().ingredient.count({ where: { bakeryId: bakery.bakeryId, name: 'Twin flour' } })).toBe(1)
  })

  it('is changed whole: figures that are left out are gone, and it says so in the record', async () => {
    const ingredientId = await addFlour()
    const figures = { water: { gPer100G: 14, source: 'Own oven test' } }
    valueOf(
      await changeIngredient.call(bakery.head.caller, {
        ...facts,
        name: 'Flour, dry',
        figures,
        counts: ['protein', 'water'],
        bindsWater: true,
        ingredientId,
        seenRevision: 1,
        allergenCheck: 'as-before',
        inUse: false,
      }),
    )
    const now = valueOf(await getIngredient.call(bakery.head.caller, { ingredientId }))
    expect(now).toMatchObject({ countsAsUsual: false, counted: ['water', 'protein'], bindsWater: true })
    expect(now).toMatchObject({
      name: 'Flour, dry',
      endedAt: testNow,
      allergensCheckedAt: testNow,
      revision: 2,
      figures: [{ figure: 'water', gPer100G: 14, source: 'Own oven test' }],
    })
    const last = await db().auditEntry.findFirstOrThrow({
      where: { bakeryId: bakery.bakeryId, targetId: ingredientId },
      orderBy: { number: 'desc' },
    })
    expect(JSON.parse(last.entryText)).toMatchObject({
      action: 'stores.change-ingredient',
      before: {
        inUse: true,
        figures: [
          { figure: 'water', gPer100G: 13.36 },
          { figure: 'fat', gPer100G: 1.66 },
        ],
      },
      after: { inUse: false, name: 'Flour, dry' },
    })
  })

  it('keeps the first of two changes, and tells the second who was faster', async () => {
    const ingredientId = await addFlour()
    const change = { ...facts, ingredientId, seenRevision: 1, allergenCheck: 'as-before', inUse: true }
    valueOf(await changeIngredient.call(bakery.owner.caller, { ...change, name: 'Faster flour' }))
    const second = await changeIngredient.call(bakery.head.caller, { ...change, name: 'Slower flour', figures: {} })
    expect(refusalOf(second)).toBe('stale')
    expect(second.ok ? {} : second.refusal.facts).toMatchObject({ who: 'Olga' })
    expect(valueOf(await getIngredient.call(bakery.head.caller, { ingredientId }))).toMatchObject({
      name: 'Faster flour',
      figures: [{}, {}],
    })
  })

  it('does not carry a check of allergens over to another list', async () => {
    const ingredientId = await addFlour()
    const change = {
      ...facts,
      name: 'Checked flour',
      ingredientId,
      seenRevision: 1,
      inUse: true,
      allergens: ['gluten', 'soya'],
    }
    expect(refusalOf(await changeIngredient.call(bakery.head.caller, { ...change, allergenCheck: 'as-before' }))).toBe(
      'invalid allergenCheck:check-again',
    )
    expect(valueOf(await getIngredient.call(bakery.head.caller, { ingredientId }))).toMatchObject({
      allergens: ['gluten'],
      revision: 1,
    })
    valueOf(await changeIngredient.call(bakery.head.caller, { ...change, allergenCheck: 'unknown' }))
    expect(valueOf(await getIngredient.call(bakery.head.caller, { ingredientId }))).toMatchObject({
      allergens: ['gluten', 'soya'],
      allergensCheckedAt: null,
    })
  })
})

describe('a price', () => {
  it('is in the bakery’s currency, holds from its date, and is put right by a later entry for the same date', async () => {
    const ingredientId = await addFlour()
    const at = (count: number) => callerOf(bakery.head.sessionSecret, minutes(count))
    valueOf(await enterPrice.call(at(1), price(ingredientId, '2026-01-01', '17.25')))
    valueOf(await enterPrice.call(at(2), price(ingredientId, '2026-03-02', '81.75')))
    valueOf(await enterPrice.call(at(3), price(ingredientId, '2026-03-02', '18.75')))
    valueOf(await enterPrice.call(at(4), price(ingredientId, '2026-04-01', '19.50')))
    const { costs } = valueOf(await getIngredient.call(at(5), { ingredientId }))
    expect(
      costs?.entries.map(({ holdsFrom, packPrice, perKg, currency, enteredBy, state }) => [
        holdsFrom,
        packPrice,
        perKg,
        currency,
        enteredBy,
        state,
      ]),
    ).toEqual([
      ['2026-04-01', '19.5', '0.78', 'EUR', 'Henk', 'coming'],
      ['2026-03-02', '18.75', '0.75', 'EUR', 'Henk', 'holds'],
      ['2026-03-02', '81.75', '3.27', 'EUR', 'Henk', 'replaced'],
      ['2026-01-01', '17.25', '0.69', 'EUR', 'Henk', 'past'],
    ])
    const on = async (day: string) =>
      (await priceOn(db(), bakery.bakeryId, [ingredientId], day)).get(ingredientId)?.perKg.toFixed()
    expect([
      await on('2025-12-31'),
      await on('2026-01-01'),
      await on('2026-03-01'),
      await on('2026-03-02'),
      await on('2027-01-01'),
    ]).toEqual([undefined, '0.69', '0.69', '0.75', '0.78'])
  })

  it('of today is that of the day on the bakery’s own clock', async () => {
    const ingredientId = await addFlour()
    valueOf(await enterPrice.call(bakery.head.caller, price(ingredientId, '2026-03-03')))
    const priceAt = async (at: string) =>
      valueOf(await listIngredients.call(callerOf(bakery.head.sessionSecret, new Date(at)), {})).costs?.prices.get(
        ingredientId,
      )?.perKg
    // The bakery is in Berlin, an hour before UTC in March.
    valueOf(await getFormUnits.call(callerOf(bakery.head.sessionSecret, minutes(15)), {}))
    expect(await priceAt('2026-03-02T04:10:00Z')).toBeUndefined()
    await db().session.updateMany({
      where: { bakeryId: bakery.bakeryId },
      data: { lastSeenAt: new Date('2026-03-02T22:59:00Z'), endsAt: new Date('2026-03-04T00:00:00Z') },
    })
    expect(await priceAt('2026-03-02T22:59:59Z')).toBeUndefined()
    expect(await priceAt('2026-03-02T23:00:00Z')).toBe('0.75')
    await db().session.updateMany({ where: { bakeryId: bakery.bakeryId }, data: { lastSeenAt: testNow } })
  })

  it('that holds is the same in SQL as in the rule, also for two of one instant', async () => {
    const ids = [await addFlour(), await addFlour()]
    const days = ['2026-01-01', '2026-01-02', '2026-01-02', '2026-01-05', '2026-01-01', '2026-01-02']
    for (const [index, day] of days.entries()) {
      const caller = callerOf(bakery.head.sessionSecret, minutes(index % 2))
      for (const id of ids) valueOf(await enterPrice.call(caller, price(id, day, String(10 + index))))
    }
    for (const ingredientId of ids) {
      const rows = await db().price.findMany({
        where: { bakeryId: bakery.bakeryId, ingredientId },
        select: { id: true, holdsFrom: true, enteredAt: true },
      })
      const entries = rows.map((row) => ({ ...row, holdsFrom: row.holdsFrom.toISOString().slice(0, 10) }))
      for (const day of ['2025-12-31', '2026-01-01', '2026-01-03', '2026-01-05', '2026-02-01']) {
        expect((await priceOn(db(), bakery.bakeryId, ids, day)).get(ingredientId)?.priceId, day).toBe(
          priceThatHolds(entries, day)?.id,
        )
      }
    }
  })

  it('keeps the currency in which it was entered', async () => {
    const bakeryInPounds = await makeBakery('Pound Lane')
    const ingredientId = await addFlour(bakeryInPounds)
    valueOf(await enterPrice.call(bakeryInPounds.head.caller, price(ingredientId, '2026-01-01')))
    const settings = {
      seenRevision: 1,
      bakeryName: 'Pound Lane',
      worksAlone: false,
      costChangeLimitPct: 1,
      dayTurnsAtH: 0,
      stationIdleMin: 10,
      pinLastsH: 4,
      language: null,
      timeZone: 'Europe/London',
      locale: 'en-GB',
      currency: 'GBP',
      region: 'uk',
      massUnits: 'ounces',
      temperatureUnits: 'celsius',
    }
    valueOf(await changeSettings.call(bakeryInPounds.owner.caller, settings))
    valueOf(await enterPrice.call(bakeryInPounds.head.caller, price(ingredientId, '2026-02-01')))
    const on = async (day: string) =>
      (await priceOn(db(), bakeryInPounds.bakeryId, [ingredientId], day)).get(ingredientId)?.currency
    expect([await on('2026-01-15'), await on('2026-02-15')]).toEqual(['EUR', 'GBP'])
  })

  it('may be nothing, and then holds as nothing', async () => {
    const ingredientId = await addFlour()
    valueOf(await enterPrice.call(bakery.head.caller, price(ingredientId, '2026-01-01', '0')))
    expect(
      (await priceOn(db(), bakery.bakeryId, [ingredientId], '2026-03-02')).get(ingredientId)?.perKg.toFixed(),
    ).toBe('0')
  })

  it('cannot be changed or taken out', async () => {
    const ingredientId = await addFlour()
    valueOf(await enterPrice.call(bakery.head.caller, price(ingredientId, '2026-01-01')))
    await expect(
      db().price.updateMany({ where: { bakeryId: bakery.bakeryId, ingredientId }, data: { supplier: 'Other' } }),
    ).rejects.toThrow()
    await expect(db().price.deleteMany({ where: { bakeryId: bakery.bakeryId, ingredientId } })).rejects.toThrow()
  })
})

describe('who may', () => {
  it('see costs: to a shift baker they are not there at all', async () => {
    const ingredientId = await addFlour()
    valueOf(await enterPrice.call(bakery.head.caller, price(ingredientId, '2026-01-01', '13.37')))
    const answers = [
      await listIngredients.call(bakery.early.caller, {}),
      await getIngredient.call(bakery.early.caller, { ingredientId }),
    ]
    for (const answer of answers) {
      const value = valueOf<object>(answer)
      expect(value).not.toHaveProperty('costs')
      expect(value).toHaveProperty('mayEdit', false)
      expect(JSON.stringify(value)).not.toMatch(/13\.37|0\.5348|Weir Mill/)
    }
  })

  it('write: not a shift baker', async () => {
    const ingredientId = await addFlour()
    const scale = { kind: 'scale', name: 'No scale', note: '', resolutionG: 1, mostG: 1000 }
    expect(refusalOf(await addIngredient.call(bakery.early.caller, newFacts('Nobody’s flour')))).toBe('not-allowed')
    expect(
      refusalOf(
        await changeIngredient.call(bakery.early.caller, {
          ...facts,
          name: 'X',
          ingredientId,
          seenRevision: 1,
          allergenCheck: 'unknown',
          inUse: true,
        }),
      ),
    ).toBe('not-allowed')
    expect(refusalOf(await enterPrice.call(bakery.early.caller, price(ingredientId, '2026-01-01')))).toBe('not-allowed')
    expect(refusalOf(await addEquipment.call(bakery.early.caller, scale))).toBe('not-allowed')
    expect(
      refusalOf(
        await changeEquipment.call(bakery.early.caller, {
          ...scale,
          equipmentId: ingredientId,
          seenRevision: 1,
          inUse: true,
        }),
      ),
    ).toBe('not-allowed')
    expect(refusalOf(await getFormUnits.call(bakery.early.caller, {}))).toBe('not-allowed')
  })

  it('reach in: nobody from next door', async () => {
    const ingredientId = await addFlour()
    valueOf(await enterPrice.call(bakery.head.caller, price(ingredientId, '2026-01-01')))
    expect(refusalOf(await getIngredient.call(neighbour.owner.caller, { ingredientId }))).toBe('not-found')
    expect(refusalOf(await enterPrice.call(neighbour.owner.caller, price(ingredientId, '2026-01-02')))).toBe(
      'not-found',
    )
    expect(
      refusalOf(
        await changeIngredient.call(neighbour.owner.caller, {
          ...facts,
          name: 'X',
          ingredientId,
          seenRevision: 1,
          allergenCheck: 'unknown',
          inUse: true,
        }),
      ),
    ).toBe('not-found')
    expect((await priceOn(db(), neighbour.bakeryId, [ingredientId], '2026-03-02')).size).toBe(0)
    const { inUse, ended } = valueOf(await listIngredients.call(neighbour.owner.caller, {}))
    expect([...inUse.rows, ...ended.rows].map(({ id }) => id)).not.toContain(ingredientId)
  })
})

describe('equipment', () => {
  const scale = { kind: 'scale', name: 'Dose scale', note: '', resolutionG: 0.1, mostG: 3000 }

  it('is kept with the facts of its kind, changed, and taken out of use', async () => {
    const { equipmentId } = valueOf(await addEquipment.call(bakery.head.caller, scale))
    expect(valueOf(await getEquipment.call(bakery.early.caller, { equipmentId }))).toMatchObject({
      kind: 'scale',
      resolutionG: 0.1,
      mostG: 3000,
      leastG: null,
      decks: null,
      mayEdit: false,
    })
    const change = { ...scale, equipmentId, seenRevision: 1, inUse: false, leastG: 2 }
    valueOf(await changeEquipment.call(bakery.head.caller, change))
    expect(valueOf(await getEquipment.call(bakery.head.caller, { equipmentId }))).toMatchObject({
      leastG: 2,
      endedAt: testNow,
      revision: 2,
    })
    expect(refusalOf(await changeEquipment.call(bakery.head.caller, change))).toBe('stale')
    expect(
      refusalOf(
        await changeEquipment.call(bakery.head.caller, {
          kind: 'proofer',
          name: 'Dose scale',
          note: '',
          equipmentId,
          seenRevision: 2,
          inUse: true,
        }),
      ),
    ).toBe('not-found')
    expect(refusalOf(await addEquipment.call(bakery.head.caller, scale))).toBe('invalid name:name-taken')
    expect(refusalOf(await getEquipment.call(neighbour.owner.caller, { equipmentId }))).toBe('not-found')
    expect(refusalOf(await changeEquipment.call(neighbour.owner.caller, { ...change, seenRevision: 2 }))).toBe(
      'not-found',
    )
    expect(valueOf(await listEquipment.call(neighbour.owner.caller, {})).equipment).toEqual([])
  })
})

describe('what mixing water is made of', () => {
  it('is kept with its temperature, and hot water goes on a dough at 60 °C at most unless the bakery says otherwise', async () => {
    const { equipmentId } = valueOf(
      await addEquipment.call(bakery.head.caller, { kind: 'hot_water', name: 'Boiler', note: '', tempC: 72 }),
    )
    expect(valueOf(await getEquipment.call(bakery.early.caller, { equipmentId }))).toMatchObject({
      kind: 'hot_water',
      tempC: 72,
      limitC: 60,
      resolutionG: null,
    })
    valueOf(
      await changeEquipment.call(bakery.head.caller, {
        kind: 'hot_water',
        name: 'Boiler',
        note: '',
        tempC: 72,
        limitC: 50,
        equipmentId,
        seenRevision: 1,
        inUse: true,
      }),
    )
    expect(valueOf(await getEquipment.call(bakery.early.caller, { equipmentId }))).toMatchObject({ limitC: 50 })
  })

  it.each([
    ['hot_water', { tempC: null, limitC: 60 }],
    ['hot_water', { tempC: 55, limitC: null }],
    ['hot_water', { tempC: 99, limitC: 60 }],
    ['chilled_water', { tempC: null }],
    ['chilled_water', { tempC: 21 }],
    ['tap_water', { tempC: null }],
    ['tap_water', { tempC: 41 }],
    ['ice', { tempC: null }],
    ['ice', { tempC: 1 }],
  ] as const)('is refused by the database itself where it cannot be: %s %o', async (kind, facts) => {
    const row = {
      bakeryId: bakery.bakeryId,
      id: randomUUID(),
      kind,
      name: randomUUID(),
      note: '',
      revision: 1,
      createdAt: testNow,
      ...facts,
    }
    await expect(db().equipment.create({ data: row })).rejects.toThrow(`equipment_${kind}_whole`)
  })
})

it('the demo’s stores are taken by the real commands, priced, and leave the record whole', async () => {
  const demo = await makeBakery('Demo')
  const { ingredients, equipment } = await seedStores(demo.head.caller)
  const listed = valueOf(await listIngredients.call(demo.head.caller, {}))
  expect(new Set(Object.values(ingredients))).toEqual(new Set(listed.inUse.rows.map(({ id }) => id)))
  expect(listed.costs?.prices.size).toBe(listed.inUse.count)
  expect(valueOf(await listEquipment.call(demo.head.caller, {})).equipment).toHaveLength(Object.keys(equipment).length)
  expect(valueOf(await verifyRecord.call(demo.owner.caller, {})).fault).toBeNull()
})
