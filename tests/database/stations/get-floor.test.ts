import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { v7 as uuid } from 'uuid'
import { db } from '@/lib/db/client'
import { takeEntries } from '@/lib/kitchen/intake/take-entries'
import { beginBatch } from '@/lib/kitchen/shifts/begin-batch'
import { moveBatch } from '@/lib/kitchen/shifts/move-batch'
import { noLooks } from '@/lib/kitchen/steps/looks.input'
import { getFloor } from '@/lib/kitchen/stations/get-floor'
import { makeApprovedTrial, type ApprovedTrial } from '@/tests/support/approved-trial'
import { makeBakery, refusalOf, testNow, valueOf, type TestBakery } from '@/tests/support/bakery'
import { freshDatabase, type FreshDatabase } from '@/tests/support/database'
import { openTheKey } from '@/tests/support/open-the-key'
import { atStation, enrolledStation, givePin, tokenAt, type TestStation } from '@/tests/support/stations'

let database: FreshDatabase
let bakery: TestBakery
let station: TestStation
let trial: ApprovedTrial
let token: string

beforeAll(async () => {
  database = await freshDatabase()
  bakery = await makeBakery('Mill Row')
  station = await enrolledStation(bakery)
  await givePin(bakery.early)
  await givePin(bakery.owner)
  token = await tokenAt(station, bakery.early)
  trial = await makeApprovedTrial(bakery, {
    arms: 3,
    pieces: 3,
    factor: { name: 'Bake temperature', levels: ['220 °C', '230 °C'] },
  })
})
afterAll(() => database.drop())

const floor = async (by = token) => valueOf(await getFloor.call(atStation(station, by), {})).doughs
const begin = async (at: number) =>
  valueOf(
    await beginBatch.call(bakery.early.caller, {
      batchId: trial.batches[at]!.batchId,
      seenRevision: 1,
      cleanDownDone: false,
    }),
  )
const read = async (at: number, measure: string, value: string, more: object = {}) =>
  valueOf(
    await takeEntries.call(atStation(station, token), {
      entries: [
        {
          kind: 'reading',
          id: uuid(),
          batchId: trial.batches[at]!.batchId,
          measureId: trial.measures[measure],
          repeat: 1,
          value,
          unit: measure === 'dough-temp' ? '°C' : 'g',
          takenAt: testNow.toISOString(),
          confirmed: true,
          ...more,
        },
      ],
    }),
  )

describe('what a tablet reads', () => {
  it('is nothing before a dough is begun, and then the begun ones in their turn', async () => {
    expect(await floor()).toEqual([])
    await begin(0)
    await begin(1)
    expect((await floor()).map(({ code, state, turn }) => [code, state, turn])).toEqual([
      [trial.batches[0]!.code, 'weighing', 1],
      [trial.batches[1]!.code, 'weighing', 2],
    ])
  })

  it('names every place, each piece with its level, and what stands there by whom', async () => {
    await read(0, 'dough-temp', '26.4')
    await read(0, 'loaf-mass', '431', { piece: 2, factorLevel: '230 °C' })
    const [dough] = await floor()
    const measure = (code: string) => dough?.measures.find((each) => each.code === code)
    expect(measure('dough-temp')).toMatchObject({
      unit: '°C',
      isWanted: true,
      places: [{ piece: null, factorLevel: null, repeat: 1, reading: { value: '26.4', unit: '°C', who: 'Esi' } }],
    })
    const loaves = measure('loaf-mass')?.places ?? []
    expect(
      loaves.filter(({ repeat }) => repeat === 1).map((each) => [each.piece, each.factorLevel, each.reading?.value]),
    ).toEqual([
      [1, '220 °C', undefined],
      [2, '230 °C', '431'],
      [3, '220 °C', undefined],
    ])
    // Half to one and a half times the 480 g that are scaled.
    expect(measure('loaf-mass')).toMatchObject({ least: 240, most: 720 })
    expect(measure('proof-time')?.unit).toBe('min')
    expect(dough?.measures.some(({ code }) => code === 'specific-volume')).toBe(false)
  })

  it('asks in the bakery’s own degrees', async () => {
    await db().bakery.update({ where: { bakeryId: bakery.bakeryId }, data: { temperatureUnits: 'fahrenheit' } })
    const [dough] = await floor()
    await db().bakery.update({ where: { bakeryId: bakery.bakeryId }, data: { temperatureUnits: 'celsius' } })
    expect(dough?.measures.find(({ code }) => code === 'dough-temp')).toMatchObject({
      unit: '°F',
      least: 50,
      most: 104,
    })
  })

  it('hides no allergen, and tells nothing else of what is in a dough, whatever somebody opened at the desk', async () => {
    const before = await floor()
    expect(before.map(({ allergens }) => allergens)).toEqual([['gluten'], ['gluten']])
    await begin(2)
    expect((await floor())[2]?.allergens.toSorted()).toEqual(['gluten', 'milk'])
    await openTheKey(bakery.owner.caller, trial.trialId)
    const ofOwner = await floor(await tokenAt(station, bakery.owner))
    expect(ofOwner).toEqual(await floor())
    const text = JSON.stringify(ofOwner)
    for (const secret of [...trial.armIds, 'milk powder', 'Control', 'ingredient', 'massG', 'price', 'cost', 'plan'])
      expect(text, secret).not.toContain(secret)
    // What water is told by is the control's, also for the dough with milk.
    const [first, ...others] = ofOwner.map(({ water }) => water)
    expect(first).toMatchObject({ outcome: 'known', targetC: 26 })
    expect(others).toEqual([first, first])
  })

  it('says when a dough came out of the oven and at what age a measure is read, by which a tablet knows what falls due', async () => {
    const { batchId } = trial.batches[0]!
    const bakedAt = new Date(testNow.getTime() + 3 * 60 * 60_000)
    const atThree = { ...bakery.early.caller, now: () => bakedAt }
    await db().session.updateMany({ where: { personId: bakery.early.personId }, data: { lastSeenAt: bakedAt } })
    valueOf(await moveBatch.call(bakery.early.caller, { batchId, seenRevision: 2, to: 'in_work' }))
    expect((await floor())[0]).toMatchObject({ state: 'in_work', bakedAt: null })
    valueOf(await moveBatch.call(atThree, { batchId, seenRevision: 3, to: 'baked' }))
    const [dough] = await floor()
    expect(dough).toMatchObject({ state: 'baked', bakedAt: bakedAt.toISOString() })
    expect(
      dough?.measures
        .filter(({ ageLeastH }) => ageLeastH !== null)
        .map((each) => [each.code, each.ageLeastH, each.ageMostH]),
    ).toEqual([['loaf-mass', 1, 3]])
  })

  it('says when somebody is called to look at a dough, as the bakery says it', async () => {
    const looks = async () => valueOf(await getFloor.call(atStation(station, token), {})).looks
    expect(await looks()).toEqual(noLooks)
    const said = { ...noLooks, restLookMin: 15, restMostMin: 40 }
    await db().bakery.update({ where: { bakeryId: bakery.bakeryId }, data: said })
    expect(await looks()).toEqual(said)
  })

  it('names what is begun next of each trial in the drawn order, also of one of which nothing is begun', async () => {
    const other = await makeApprovedTrial(bakery, { arms: 2, days: 2 })
    const next = async () => valueOf(await getFloor.call(atStation(station, token), {})).next
    const seen = await next()
    expect(seen.map(({ code }) => code)).toEqual([other.batches[0]!.code])
    expect(seen[0]).toMatchObject({ cleanDownFirst: false })
    const begun = { batchId: other.batches[0]!.batchId, seenRevision: 1, cleanDownDone: false }
    valueOf(await beginBatch.call(bakery.early.caller, begun))
    expect((await next()).map(({ code }) => code)).toEqual([other.batches[1]!.code])
    const [skipped] = other.batches.slice(1)
    valueOf(
      await moveBatch.call(bakery.early.caller, {
        batchId: skipped!.batchId,
        seenRevision: 1,
        to: 'not_baked',
        why: 'No flour.',
      }),
    )
    expect((await next()).map(({ code }) => code)).toEqual([other.batches[2]!.code])
  })

  it('says that there are more trials than it shows', async () => {
    const crowded = await makeBakery('Many Trials')
    const there = await enrolledStation(crowded)
    await givePin(crowded.early)
    const by = await tokenAt(there, crowded.early)
    const seen = async () => valueOf(await getFloor.call(atStation(there, by), {}))
    for (let count = 0; count < 20; count++) await makeApprovedTrial(crowded)
    expect(await seen()).toMatchObject({ isCut: false, next: { length: 20 } })
    await makeApprovedTrial(crowded)
    expect(await seen()).toMatchObject({ isCut: true, next: { length: 20 } })
  })

  it('leaves out a dough that is out, and the neighbour’s', async () => {
    const { batchId, code } = trial.batches[1]!
    valueOf(await moveBatch.call(bakery.early.caller, { batchId, seenRevision: 2, to: 'lost', why: 'It fell.' }))
    expect((await floor()).map((dough) => dough.code)).not.toContain(code)
    const neighbour = await makeBakery('Next Door')
    const other = await enrolledStation(neighbour)
    await givePin(neighbour.early)
    const there = await tokenAt(other, neighbour.early)
    expect(valueOf(await getFloor.call(atStation(other, there), {})).doughs).toEqual([])
    expect(refusalOf(await getFloor.call(atStation(other, token), {}))).toBe('not-allowed')
  })
})
