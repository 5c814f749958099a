import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { listLacking } from '@/lib/kitchen/intake/list-lacking'
import { mostAsked } from '@/lib/kitchen/intake/list-lacking.input'
import { takeEntries } from '@/lib/kitchen/intake/take-entries'
import { beginBatch } from '@/lib/kitchen/shifts/begin-batch'
import { makeApprovedTrial, type ApprovedTrial } from '@/tests/support/approved-trial'
import { makeBakery, refusalOf, testNow, valueOf, type TestBakery } from '@/tests/support/bakery'
import { freshDatabase, type FreshDatabase } from '@/tests/support/database'
import { atStation, enrolledStation, givePin, tokenAt, type TestStation } from '@/tests/support/stations'

let database: FreshDatabase
let bakery: TestBakery
let station: TestStation
let next: TestStation
let trial: ApprovedTrial
let token: string

beforeAll(async () => {
  database = await freshDatabase()
  bakery = await makeBakery('Mill Row')
  station = await enrolledStation(bakery)
  next = await enrolledStation(await makeBakery('Quay Side'))
  await givePin(bakery.early)
  token = await tokenAt(station, bakery.early)
  trial = await makeApprovedTrial(bakery)
  const begun = { batchId: trial.batches[0]!.batchId, seenRevision: 1, cleanDownDone: true }
  valueOf(await beginBatch.call(bakery.early.caller, begun))
})
afterAll(() => database.drop())

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
/** What the tablet is answered: ids and hashes, as it keeps them. */
async function told(entries: object[]) {
  const answers = valueOf(await takeEntries.call(atStation(station, token), { entries })).entries
  return answers.map((each) => {
    if (each.outcome === 'refused') throw new Error(each.refusal.code)
    return { outcome: each.outcome, id: each.id, hash: each.hash }
  })
}
const held = ({ id, hash }: { id: string; hash: string }) => ({ id, hash })
const lacking = async (entries: object[], at = station) =>
  valueOf(await listLacking.call(atStation(at, null), { entries })).lacking

it('names what is neither kept nor aside, to a tablet of the bakery alone, with nobody on it', async () => {
  const [kept, aside] = await told([reading(), reading({ value: '27' })])
  expect([kept!.outcome, aside!.outcome]).toEqual(['kept', 'aside'])
  const both = [held(kept!), held(aside!)]
  expect(await lacking(both)).toEqual([])
  expect(await lacking([{ ...held(kept!), id: kept!.id.toUpperCase() }])).toEqual([])
  expect(await lacking(both.map((each, at) => ({ ...each, outcome: (['kept', 'aside'] as const)[at] })))).toEqual([])
  // Told as one thing and there as another it is sent again, and answered as what it is.
  expect(await lacking(both.map((each, at) => ({ ...each, outcome: (['aside', 'kept'] as const)[at] })))).toEqual(
    both.map(({ id }) => id),
  )
  const gone = { id: uuid(), hash: kept!.hash }
  const other = { id: kept!.id, hash: aside!.hash }
  expect(await lacking([gone, held(kept!), other])).toEqual([gone.id, other.id])
  expect(await lacking(both, next)).toEqual(both.map(({ id }) => id))
})

it('is asked within bounds, and by enrolled tablets only', async () => {
  const one = { id: uuid(), hash: 'a'.repeat(64) }
  const asked = (entries: object[]) => listLacking.call(atStation(station, null), { entries })
  expect(await lacking(Array.from({ length: mostAsked }, () => one))).toHaveLength(mostAsked)
  expect(refusalOf(await asked(Array.from({ length: mostAsked + 1 }, () => one)))).toBe('invalid entries:too-many')
  expect(refusalOf(await asked([]))).toMatch(/^invalid entries:/)
  expect(refusalOf(await asked([{ ...one, hash: 'x' }]))).toMatch(/^invalid entries/)
  expect(refusalOf(await listLacking.call(bakery.owner.caller, { entries: [one] }))).toBe('not-allowed')
})
