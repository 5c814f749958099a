import fc from 'fast-check'
import { randomUUID } from 'node:crypto'
import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { addIngredient } from '@/lib/kitchen/stores/add-ingredient'
import { endLot } from '@/lib/kitchen/stores/end-lot'
import { listLots } from '@/lib/kitchen/stores/list-lots'
import { receiveLot } from '@/lib/kitchen/stores/receive-lot'
import { callerOf, makeBakery, refusalOf, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { connected, freshDatabase, type FreshDatabase } from '../../support/database'

let database: FreshDatabase
let bakery: TestBakery
let neighbour: TestBakery

beforeAll(async () => {
  database = await freshDatabase()
  bakery = await makeBakery('Mill Row')
  neighbour = await makeBakery('Next Door')
})
afterAll(() => database.drop())

let serial = 0
async function addMalt(more: object = {}, to: TestBakery = bakery): Promise<string> {
  const facts = {
    name: `Malt ${++serial}`,
    labelName: 'Barley malt',
    kind: 'malt',
    active: null,
    customary: null,
    allergens: ['gluten'],
    allergenCheck: 'checked-now',
    dustCaution: true,
    note: '',
    figures: {},
    ...more,
  }
  return valueOf(await addIngredient.call(to.head.caller, facts)).ingredientId
}

const lot = (ingredientId: string, more: object = {}) => ({
  ingredientId,
  code: 'B 4471',
  receivedOn: '2026-03-02',
  bestBefore: '2026-09-30',
  strength: null,
  note: '',
  ...more,
})
const receive = (ingredientId: string, more: object = {}) =>
  receiveLot.call(bakery.head.caller, lot(ingredientId, more))
const lotsOf = async (ingredientId: string) => valueOf(await listLots.call(bakery.early.caller, { ingredientId }))

describe('a lot', () => {
  it('is kept with its days and what was measured of it, and a shift baker reads it', async () => {
    const ingredientId = await addMalt()
    const strength = { of: 'Diastatic power', value: 245.5, unit: '°WK' }
    const { lotId } = valueOf(await receive(ingredientId, { code: ' B 4471 ', strength, note: 'Second pallet.' }))
    const { inUse, ended, mayBeUsed, mayEdit } = await lotsOf(ingredientId)
    expect(inUse.rows).toEqual([
      {
        id: lotId,
        code: 'B 4471',
        note: 'Second pallet.',
        receivedOn: '2026-03-02',
        bestBefore: '2026-09-30',
        isPast: false,
        strength,
        wasSaid: false,
        entered: { who: 'Henk', at: testNow },
        sameAs: null,
        ended: null,
      },
    ])
    expect({ ended: ended.count, mayBeUsed, mayEdit }).toEqual({ ended: 0, mayBeUsed: true, mayEdit: false })
    const last = await db().auditEntry.findFirstOrThrow({ where: { bakeryId: bakery.bakeryId, targetId: lotId } })
    expect(JSON.parse(last.entryText)).toMatchObject({
      action: 'stores.receive-lot',
      after: { code: 'B 4471', strength },
    })
  })

  it.each([
    [
      'received tomorrow by the bakery’s clock',
      { receivedOn: '2026-03-03', bestBefore: null },
      'receivedOn:received-in-future',
    ],
    ['best before the day on which it came', { bestBefore: '2026-03-01' }, 'bestBefore:before-received'],
    ['without a code', { code: ' \t' }, 'code:missing'],
    ['under a code that nobody can see', { code: '\u200b\u2060' }, 'code:unreadable'],
    ['under a code without end', { code: 'x'.repeat(61) }, 'code:too-long'],
    ['of a year that never was', { receivedOn: '0026-03-02' }, 'receivedOn:day-far-away'],
    ['on a day that is none', { receivedOn: '2026-02-30' }, 'receivedOn:wrong-form'],
    [
      'with a figure and no unit',
      { strength: { of: 'Falling number', value: 280, unit: '' } },
      'strength.unit:missing',
    ],
    ['with a figure below nothing', { strength: { of: 'W', value: -1, unit: 'J' } }, 'strength.value:too-small'],
    ['with a word for a figure', { strength: { of: 'W', value: 'much', unit: 'J' } }, 'strength.value:not-a-number'],
  ])('%s is refused, and nothing is kept', async (_, more, fault) => {
    const ingredientId = await addMalt()
    expect(refusalOf(await receive(ingredientId, more))).toBe(`invalid ${fault}`)
    expect((await lotsOf(ingredientId)).inUse.count).toBe(0)
  })

  it('may be best before the very day on which it came, or have no such day', async () => {
    const ingredientId = await addMalt()
    valueOf(await receive(ingredientId, { bestBefore: '2026-03-02' }))
    valueOf(await receive(ingredientId, { code: 'B 2', bestBefore: null }))
  })

  it('is received on the day of the bakery’s own clock', async () => {
    const ingredientId = await addMalt()
    // The bakery is in Berlin, where it is the third already.
    await db().session.updateMany({
      where: { bakeryId: bakery.bakeryId },
      data: { endsAt: new Date('2026-03-04T00:00:00Z'), lastSeenAt: new Date('2026-03-02T23:05:00Z') },
    })
    const caller = callerOf(bakery.head.sessionSecret, new Date('2026-03-02T23:10:00Z'))
    valueOf(await receiveLot.call(caller, lot(ingredientId, { receivedOn: '2026-03-03' })))
    await db().session.updateMany({ where: { bakeryId: bakery.bakeryId }, data: { lastSeenAt: testNow } })
  })

  it('has a code of its own among those in use of its ingredient, whatever the capitals', async () => {
    const [ingredientId, other] = [await addMalt(), await addMalt()]
    valueOf(await receive(ingredientId))
    expect(refusalOf(await receive(ingredientId, { code: 'b 4471' }))).toBe('invalid code:lot-code-taken')
    valueOf(await receive(other))
    expect((await lotsOf(ingredientId)).inUse.count).toBe(1)
  })

  it('takes one code once when three send it at the same moment', async () => {
    const ingredientId = await addMalt()
    const tries = await Promise.all([1, 2, 3].map(() => receiveLot.call(bakery.owner.caller, lot(ingredientId))))
    expect(tries.map((result) => (result.ok ? 'kept' : refusalOf(result))).sort()).toEqual([
      'invalid code:lot-code-taken',
      'invalid code:lot-code-taken',
      'kept',
    ])
  })

  it('is past its best-before day from the day after on', async () => {
    const ingredientId = await addMalt()
    valueOf(await receive(ingredientId, { receivedOn: '2026-02-01', bestBefore: '2026-03-01' }))
    valueOf(await receive(ingredientId, { code: 'B 2', bestBefore: '2026-03-02' }))
    const { inUse } = await lotsOf(ingredientId)
    expect(inUse.rows.map(({ code, isPast }) => [code, isPast])).toEqual([
      ['B 2', false],
      ['B 4471', true],
    ])
  })
})

describe('a lot that is ended', () => {
  it('stays, with why and by whom, and its code may be received again', async () => {
    const ingredientId = await addMalt()
    const { lotId } = valueOf(await receive(ingredientId))
    valueOf(await endLot.call(bakery.owner.caller, { lotId, why: 'mistaken' }))
    expect(refusalOf(await endLot.call(bakery.head.caller, { lotId, why: 'used_up' }))).toBe('stale')
    const again = valueOf(await receive(ingredientId, { bestBefore: '2026-10-30' }))
    const { inUse, ended } = await lotsOf(ingredientId)
    expect(inUse.rows.map(({ id }) => id)).toEqual([again.lotId])
    expect(ended.rows).toMatchObject([
      { id: lotId, bestBefore: '2026-09-30', ended: { why: 'mistaken', who: 'Olga', at: testNow } },
    ])
  })

  it('is ended once when two end it at the same moment', async () => {
    const { lotId } = valueOf(await receive(await addMalt()))
    const tries = await Promise.all(
      (['used_up', 'taken_out'] as const).map((why) => endLot.call(bakery.head.caller, { lotId, why })),
    )
    expect(tries.map((result) => (result.ok ? 'ended' : refusalOf(result))).sort()).toEqual(['ended', 'stale'])
  })
})

describe('what was written of a lot', () => {
  it('is changed by nobody, not even past the app', async () => {
    const { lotId } = valueOf(await receive(await addMalt()))
    const change = (sets: string) =>
      connected(database.ownerUrl, (client) => client.query(`UPDATE lot SET ${sets} WHERE id = $1`, [lotId]))
    for (const sets of [
      `code = 'B 1'`,
      `best_before = NULL`,
      `best_before = '2030-01-01'`,
      `strength_of = 'W', strength = 1, strength_unit = 'J'`,
      `note = 'x'`,
      `ended_why = 'used_up', ended_at = now(), ended_by_id = entered_by_id, code = 'B 1'`,
    ])
      await expect(change(sets), sets).rejects.toMatchObject({ code: 'EV004' })
    await change(`ended_why = 'used_up', ended_at = now(), ended_by_id = entered_by_id`)
    await expect(change(`ended_why = NULL, ended_at = NULL, ended_by_id = NULL`)).rejects.toMatchObject({
      code: 'EV004',
    })
    await expect(db().lot.deleteMany({ where: { bakeryId: bakery.bakeryId, id: lotId } })).rejects.toThrow('EV004')
  })
})

describe('lots of an ingredient of whose allergens', () => {
  it.each([
    ['nothing was said do not go into a dough', { allergens: [], allergenCheck: 'unknown' }, false],
    ['one is said do', { allergens: ['gluten'], allergenCheck: 'unknown' }, true],
    ['it was checked that there are none do', { allergens: [], allergenCheck: 'checked-now' }, true],
  ] as const)('%s', async (_, allergens, mayBeUsed) => {
    const ingredientId = await addMalt(allergens)
    valueOf(await receive(ingredientId))
    expect((await lotsOf(ingredientId)).mayBeUsed).toBe(mayBeUsed)
  })
})

describe('the list of lots', () => {
  it('shows each once over its pages, the latest delivery first, also while more come in', async () => {
    const ingredientId = await addMalt()
    const add = (count: number, day: string) =>
      db().lot.createMany({
        data: Array.from({ length: count }, (_, at) => ({
          bakeryId: bakery.bakeryId,
          id: uuid(),
          ingredientId,
          code: `${day} ${at} ${randomUUID().slice(0, 8)}`,
          receivedOn: new Date(day),
          note: '',
          enteredById: bakery.head.personId,
          enteredAt: testNow,
        })),
      })
    for (const day of ['2026-02-03', '2026-02-01', '2026-02-02']) await add(40, day)
    const stored = await db().lot.findMany({
      where: { bakeryId: bakery.bakeryId, ingredientId },
      orderBy: [{ receivedOn: 'desc' }, { id: 'desc' }],
      select: { id: true },
    })
    const seen: string[] = []
    let after: string | null = null
    do {
      const page: { rows: { id: string }[]; after: string | null } = valueOf(
        await listLots.call(bakery.head.caller, { ingredientId, ...(after === null ? {} : { after }) }),
      ).inUse
      seen.push(...page.rows.map(({ id }) => id))
      after = page.after
      await add(1, '2026-02-28')
    } while (after !== null)
    expect(seen).toEqual(stored.map(({ id }) => id))
  })

  it('begins at the first page with any cursor that is none', async () => {
    const ingredientId = await addMalt()
    valueOf(await receive(ingredientId))
    const first = await lotsOf(ingredientId)
    await fc.assert(
      fc.asyncProperty(fc.oneof(fc.string(), fc.json(), fc.constant('a'.repeat(3000))), async (after) => {
        expect(valueOf(await listLots.call(bakery.early.caller, { ingredientId, after }))).toEqual(first)
      }),
      { seed: 12, numRuns: 40 },
    )
  })
})

describe('who may', () => {
  it('write: not a shift baker', async () => {
    const ingredientId = await addMalt()
    const { lotId } = valueOf(await receive(ingredientId))
    expect(refusalOf(await receiveLot.call(bakery.early.caller, lot(ingredientId, { code: 'B 2' })))).toBe(
      'not-allowed',
    )
    expect(refusalOf(await endLot.call(bakery.early.caller, { lotId, why: 'used_up' }))).toBe('not-allowed')
  })

  it('reach in: nobody from next door, and what is not there is answered the same', async () => {
    const ingredientId = await addMalt()
    const { lotId } = valueOf(await receive(ingredientId))
    for (const id of [ingredientId, randomUUID()]) {
      expect(refusalOf(await receiveLot.call(neighbour.owner.caller, lot(id)))).toBe('not-found')
      expect(refusalOf(await listLots.call(neighbour.owner.caller, { ingredientId: id }))).toBe('not-found')
    }
    for (const id of [lotId, randomUUID()])
      expect(refusalOf(await endLot.call(neighbour.owner.caller, { lotId: id, why: 'used_up' }))).toBe('not-found')
    expect((await lotsOf(ingredientId)).inUse.rows).toMatchObject([{ id: lotId, ended: null }])
  })
})
