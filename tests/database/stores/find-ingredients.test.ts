import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { changeIngredient } from '@/lib/kitchen/stores/change-ingredient'
import { findIngredients } from '@/lib/kitchen/stores/find-ingredients'
import { makeBakery, refusalOf, testNow, valueOf, type TestBakery } from '../../support/bakery'
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

/** Invented names, put in as they are. */
async function add(names: readonly string[], to: TestBakery, endedAt: Date | null = null): Promise<string[]> {
  const rows = names.map((name) => ({
    bakeryId: to.bakeryId,
    id: uuid(),
    name,
    kind: 'other' as const,
    labelName: name,
    allergens: [],
    dustCaution: false,
    note: '',
    revision: 1,
    createdAt: testNow,
    endedAt,
  }))
  await db().ingredient.createMany({ data: rows })
  return rows.map(({ id }) => id)
}
const find = async (part: unknown, ids: readonly string[] = [], by = bakery) =>
  valueOf(await findIngredients.call(by.early.caller, { part, ids }))
const namesOf = async (part: string, ids: readonly string[] = []) =>
  (await find(part, ids)).options.map(({ name }) => name)

it('are shown by name before anything is typed, twenty of them, and how many there are is said', async () => {
  const house = await makeBakery('Thirty Loaves')
  await add(
    Array.from({ length: 30 }, (_, i) => `Grain ${String(30 - i).padStart(2, '0')}`),
    house,
  )
  const found = await find('', [], house)
  expect(found.options.map(({ name }) => name)).toEqual(
    Array.from({ length: 20 }, (_, i) => `Grain ${String(i + 1).padStart(2, '0')}`),
  )
  expect(found).toMatchObject({ count: 30, named: null })
})

it('are found by any part of a name, whatever its accents and capitals: first who is called so, then who begins so', async () => {
  await add(
    ['Crème fraîche', 'Sour crème', 'CREME', 'Weißmehl', 'Rødhvede', 'Żytnia mąka', 'Ωmega seed', 'Milk powder'],
    bakery,
  )
  expect(await namesOf('creme')).toEqual(['CREME', 'Crème fraîche', 'Sour crème'])
  expect(await namesOf('  CRÈME ')).toEqual(['CREME', 'Crème fraîche', 'Sour crème'])
  expect(await namesOf('cre\u0300me fr')).toEqual(['Crème fraîche'])
  expect(await namesOf('WEISS')).toEqual(['Weißmehl'])
  expect(await namesOf('rodh')).toEqual(['Rødhvede'])
  expect(await namesOf('zytnia maka')).toEqual(['Żytnia mąka'])
  expect(await namesOf('ωM')).toEqual(['Ωmega seed'])
  expect(await namesOf('powder milk')).toEqual([])
})

it('are named by a whole name alone, and by none that several share', async () => {
  await add(['Spelt', 'Spelt flakes', 'Barley', 'barley', 'Bärley'], bakery)
  expect((await find('spelt ')).named?.name).toBe('Spelt')
  expect((await find('spel')).named).toBeNull()
  expect((await find('spelt f')).named).toBeNull()
  expect((await find('barley')).named?.name).toBe('barley')
  expect((await find('Barley')).named?.name).toBe('Barley')
  expect((await find('BARLEY')).named).toBeNull()
  expect((await find('')).named).toBeNull()
})

it.each([
  ['% and _', ['%', '_', '%%', '_____', '\\', '\\%']],
  ['quotes and SQL', ["'", "' OR true --", '"; DROP TABLE ingredient', '${1}', '$1']],
  ['patterns', ['.*', '[a-z]', '(', '\\u0300', '^', '[\u0300-\u036f]']],
  ['what the database cannot hold', ['\u0000', 'Sp\u0000elt', '\ud800', 'Spelt\udc00']],
  ['much', ['a'.repeat(10_000), '\u0300'.repeat(10_000), '’'.repeat(201)]],
])('take %s for what it is, part of a name', async (_, parts) => {
  for (const part of parts) expect((await find(part)).count, JSON.stringify(part.slice(0, 20))).toBe(0)
})

it('are found by a name that holds such signs', async () => {
  await add(['Rye 100 % (type_1150)', "Baker’s 'own'"], bakery)
  expect(await namesOf('100 %')).toEqual(['Rye 100 % (type_1150)'])
  expect(await namesOf('type_1')).toEqual(['Rye 100 % (type_1150)'])
  expect(await namesOf("'own'")).toEqual(["Baker’s 'own'"])
})

it('are only the bakery’s own, by name and by id', async () => {
  const [theirs = ''] = await add(['Secret of next door'], neighbour)
  const [own = ''] = await add(['Secret of ours'], bakery)
  expect(await namesOf('secret')).toEqual(['Secret of ours'])
  expect(await namesOf('secret', [theirs])).toEqual(['Secret of ours'])
  expect((await find(null, [theirs, own])).options.map(({ id }) => id)).toEqual([own])
  expect((await find('Secret of next door', [theirs])).named).toBeNull()
})

it('are left out once they are ended, unless the form holds them already', async () => {
  const [ended = ''] = await add(['Teff, the former'], bakery, testNow)
  await add(['Teff'], bakery)
  expect(await namesOf('teff')).toEqual(['Teff'])
  expect((await find('Teff, the former')).named).toBeNull()
  const held = await find('teff', [ended])
  expect(held.options.map(({ name, isEnded }) => [name, isEnded])).toEqual([
    ['Teff', false],
    ['Teff, the former', true],
  ])
  expect(held.count).toBe(2)
})

it('come by their ids as they stand now, in that order, each once, with kind and composition', async () => {
  const [first = '', second = ''] = await add(['Amaranth', 'Buckwheat'], bakery)
  await db().ingredientFigure.create({
    data: { bakeryId: bakery.bakeryId, ingredientId: second, figure: 'water', gPer100G: 12, source: 'invented' },
  })
  const facts = {
    labelName: 'Amaranth',
    kind: 'seed_or_grain',
    active: null,
    customary: null,
    allergens: [],
    dustCaution: false,
    note: '',
    figures: {},
    name: 'Amaranth, popped',
    allergenCheck: 'unknown',
    inUse: true,
  }
  valueOf(await changeIngredient.call(bakery.head.caller, { ...facts, ingredientId: first, seenRevision: 1 }))
  const found = await find(null, [second, first, second])
  expect(found.options).toEqual([
    {
      id: second,
      name: 'Buckwheat',
      kind: 'other',
      activeName: null,
      isEnded: false,
      composition: expect.objectContaining({ waterPct: 12, fatPct: null }),
    },
    { id: first, name: 'Amaranth, popped', kind: 'seed_or_grain', activeName: null, isEnded: false, composition: null },
  ])
})

it('are refused to strangers, and to a question of another shape', async () => {
  expect(refusalOf(await findIngredients.call({ ...bakery.early.caller, sessionSecret: null }, { part: '' }))).toBe(
    'not-signed-in',
  )
  for (const asked of [{ part: 7 }, { ids: ['x'] }, { part: '', bakeryId: neighbour.bakeryId }])
    expect(refusalOf(await findIngredients.call(bakery.early.caller, asked))).toMatch(/^invalid/)
})

it('are found in a bakery of 2,500, the last one too', async () => {
  const house = await makeBakery('Great Mill')
  await add(
    Array.from({ length: 2500 }, (_, i) => `Grain ${i + 1}`),
    house,
  )
  expect(await find('grain', [], house)).toMatchObject({ count: 2500, options: { length: 20 } })
  expect(await find('grain 2500', [], house)).toMatchObject({ count: 1, named: { name: 'Grain 2500' } })
})
