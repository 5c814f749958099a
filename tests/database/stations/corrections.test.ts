import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, beforeEach, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { takeEntries } from '@/lib/kitchen/intake/take-entries'
import { correctReading } from '@/lib/kitchen/readings/correct-reading'
import { beginBatch } from '@/lib/kitchen/shifts/begin-batch'
import { getFloor } from '@/lib/kitchen/stations/get-floor'
import { goOn } from '@/lib/kitchen/stations/go-on'
import { showBadge } from '@/lib/kitchen/stations/show-badge'
import { makeApprovedTrial, type ApprovedTrial } from '@/tests/support/approved-trial'
import { callerOf, makeBakery, testNow, valueOf, type TestBakery, type TestPerson } from '@/tests/support/bakery'
import { freshDatabase, type FreshDatabase } from '@/tests/support/database'
import { atStation, badgeOf, enrolledStation, givePin, tokenAt, type TestStation } from '@/tests/support/stations'

let database: FreshDatabase
let bakery: TestBakery
let station: TestStation
let trial: ApprovedTrial

beforeAll(async () => {
  database = await freshDatabase()
  bakery = await makeBakery('Mill Row')
  station = await enrolledStation(bakery)
  for (const person of [bakery.early, bakery.late, bakery.head]) await givePin(person)
})
afterAll(() => database.drop())
beforeEach(async () => {
  trial = await makeApprovedTrial(bakery)
  const begun = { batchId: trial.batches[0]!.batchId, seenRevision: 1, cleanDownDone: true }
  valueOf(await beginBatch.call(bakery.early.caller, begun))
})

const later = (minutes: number) => new Date(testNow.getTime() + minutes * 60_000)
const reading = (change: object = {}) => ({
  kind: 'reading',
  id: uuid(),
  batchId: trial.batches[0]!.batchId,
  measureId: trial.measures['dough-temp'],
  repeat: 1,
  value: '26.4',
  unit: '°C',
  takenAt: testNow.toISOString(),
  ...change,
})
const correction = (of: { id: string }, change: object = {}) => ({
  kind: 'correction',
  id: uuid(),
  supersedesId: of.id,
  repeat: 1,
  value: '24.6',
  unit: '°C',
  reason: 'Typed wrong',
  ...change,
})
const send = async (token: string, at: Date, ...entries: object[]) =>
  valueOf(await takeEntries.call(atStation(station, token, at), { entries })).entries.map((each) =>
    each.outcome === 'kept' ? 'kept' : each.refusal.code,
  )
/** A token whose shift is not over, though nobody has touched the tablet since. */
async function onAt(token: string, at: Date): Promise<string> {
  valueOf(await goOn.call(atStation(station, null, at), { shiftToken: token }))
  return token
}
const tokenOf = (person: TestPerson, at: Date = testNow) => tokenAt(station, person, undefined, at)

it('takes an own slip for ten minutes, and later only under a PIN that was typed just before', async () => {
  const token = await tokenOf(bakery.early)
  const wrong = reading()
  const right = correction(wrong)
  expect(await send(token, testNow, wrong)).toEqual(['kept'])
  await onAt(token, later(9))
  expect(await send(token, later(10), right)).toEqual(['kept'])
  // By then what is corrected came in at ten past, and what was read first is nobody's slip any more.
  const again = correction(right, { value: '24.8' })
  await onAt(token, later(19))
  expect(await send(token, later(21), again)).toEqual(['correction-wants-pin'])
  const fresh = await tokenOf(bakery.early, later(22))
  expect(await send(fresh, later(22), again)).toEqual(['kept'])
  expect(await send(fresh, later(23), again)).toEqual(['kept'])
})

it('takes an own slip of whoever came in by a badge, and nothing that wants the PIN until they typed it', async () => {
  const badge = await badgeOf(bakery.early)
  const byBadge = async (at: Date) => valueOf(await showBadge.call(atStation(station, null, at), { badge })).shiftToken
  const token = await byBadge(testNow)
  const wrong = reading()
  expect(await send(token, testNow, wrong)).toEqual(['kept'])
  const right = correction(wrong)
  expect(await send(token, later(1), right)).toEqual(['kept'])
  const again = correction(right, { value: '24.8' })
  expect(await send(await byBadge(later(12)), later(12), again)).toEqual(['correction-wants-pin'])
  expect(await send(await tokenOf(bakery.early, later(12)), later(12), again)).toEqual(['kept'])
})

it('asks for the PIN of who corrects somebody else’s, and lets nobody do so who may not', async () => {
  const token = await tokenOf(bakery.early)
  const wrong = reading()
  await send(token, testNow, wrong)
  const ofHead = await tokenOf(bakery.head)
  await onAt(ofHead, later(6))
  const right = correction(wrong)
  expect(await send(ofHead, later(6), right)).toEqual(['correction-wants-pin'])
  expect(await send(await tokenOf(bakery.head, later(7)), later(7), right)).toEqual(['kept'])
  expect(await send(await tokenOf(bakery.late), testNow, correction(right))).toEqual(['correction-not-yours'])
})

it('takes a reading and its correction in one request, and keeps one aside that came too late', async () => {
  const token = await tokenOf(bakery.early)
  const wrong = reading()
  const right = correction(wrong)
  expect(await send(token, testNow, wrong, right)).toEqual(['kept', 'kept'])
  const desk = { ...correction(right, { value: '25' }), kind: undefined }
  const { kind: _, ...input } = desk
  valueOf(await correctReading.call(bakery.head.caller, input))
  expect(await send(token, testNow, correction(right, { value: '25.2' }))).toEqual(['aside-corrected'])
})

it('asks nobody at the desk for a PIN', async () => {
  const wrong = reading()
  await send(await tokenOf(bakery.early), testNow, wrong)
  const { kind: _, ...input } = correction(wrong)
  const at = later(25)
  expect(valueOf(await correctReading.call(callerOf(bakery.head.sessionSecret, at), input)).readingId).toBe(input.id)
})

it('tells the tablet what it corrects, whose it is and how its unit lies to the base unit', async () => {
  const token = await tokenOf(bakery.early)
  const wrong = reading()
  await send(token, testNow, wrong)
  const ofTemperature = async () => {
    const { doughs } = valueOf(await getFloor.call(atStation(station, token), {}))
    return doughs.find(({ id }) => id === wrong.batchId)?.measures.find(({ code }) => code === 'dough-temp')
  }
  expect(await ofTemperature()).toMatchObject({
    repeats: 1,
    toBase: { times: 1, plus: 0 },
    places: [{ reading: { id: wrong.id, personId: bakery.early.personId, inBase: 26.4, value: '26.4' } }],
  })
  const where = { bakeryId: bakery.bakeryId }
  await db().bakery.update({ where, data: { temperatureUnits: 'fahrenheit' } })
  const inF = await ofTemperature()
  await db().bakery.update({ where, data: { temperatureUnits: 'celsius' } })
  const { times = 0, plus = 0 } = inF?.toBase ?? {}
  expect(86 * times + plus).toBeCloseTo(30, 12)
})
