import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { correctReading } from '@/lib/kitchen/readings/correct-reading'
import { logReading } from '@/lib/kitchen/readings/log-reading'
import { getResult } from '@/lib/kitchen/amendments/get-result'
import { beginBatch } from '@/lib/kitchen/shifts/begin-batch'
import { openDoughKey } from '@/lib/kitchen/shifts/open-dough-key'
import { makeApprovedTrial, type ApprovedTrial } from '../../support/approved-trial'
import { callerOf, makeBakery, testNow, valueOf, type TestBakery, type TestPerson } from '../../support/bakery'
import { closeAsItIs } from '../../support/close-as-it-is'
import { freshDatabase, type FreshDatabase } from '../../support/database'
import { openTheKey } from '../../support/open-the-key'

let database: FreshDatabase
let bakery: TestBakery
let trial: ApprovedTrial

beforeAll(async () => {
  database = await freshDatabase()
})
afterAll(() => database.drop())
beforeEach(async () => {
  bakery = await makeBakery('Mill Row')
  trial = await makeApprovedTrial(bakery)
  for (const { batchId } of trial.batches)
    valueOf(await beginBatch.call(bakery.early.caller, { batchId, seenRevision: 1, cleanDownDone: false }))
})

const after = (minute: number) => new Date(testNow.getTime() + minute * 60_000)
const at = (minute: number, who: TestPerson) => callerOf(who.sessionSecret, after(minute))
/** A loaf volume, said by the device to be taken at four, whenever it comes in. */
async function read(minute: number, who: TestPerson, dough: number, piece: number) {
  const id = uuid()
  valueOf(
    await logReading.call(at(minute, who), {
      id,
      batchId: trial.batches[dough]!.batchId,
      measureId: trial.measures['loaf-volume'],
      piece,
      repeat: 1,
      value: '1900',
      unit: 'mL',
      takenAt: testNow.toISOString(),
    }),
  )
  return id
}
const correct = async (minute: number, who: TestPerson, supersedesId: string, piece: number) =>
  valueOf(
    await correctReading.call(at(minute, who), {
      id: uuid(),
      supersedesId,
      piece,
      repeat: 1,
      value: '1910',
      unit: 'mL',
      reason: 'typed wrong',
    }),
  )
const result = async () => valueOf(await getResult.call(at(29, bakery.head), { trialId: trial.trialId }))
const close = () => closeAsItIs(bakery, trial.trialId, after(28))

describe('whether those who measured knew', () => {
  it('is told only once the readings are closed', async () => {
    await openTheKey(at(1, bakery.early), trial.trialId)
    await read(2, bakery.early, 0, 1)
    expect((await result()).knew).toBeNull()
    await close()
    expect((await result()).knew).not.toBeNull()
  })

  it('goes by the receipt: a device that sets its clock back makes nobody blind', async () => {
    await read(5, bakery.early, 0, 1)
    await openTheKey(at(10, bakery.early), trial.trialId)
    await read(11, bakery.early, 0, 2)
    await read(12, bakery.late, 0, 3)
    await close()
    // One before the key was opened by anybody, one by who knew, one by who did not.
    expect((await result()).knew!.measures).toEqual([
      { measure: { code: 'loaf-volume', name: 'Loaf volume' }, readings: 3, byKnowers: 1, unknown: 1 },
    ])
  })

  it('counts the key of one dough for that dough alone', async () => {
    valueOf(await openDoughKey.call(at(1, bakery.late), { batchId: trial.batches[1]!.batchId }))
    valueOf(await openDoughKey.call(at(1, bakery.head), { batchId: trial.batches[0]!.batchId }))
    await read(2, bakery.late, 0, 1)
    await read(2, bakery.late, 1, 1)
    await close()
    const { knew } = await result()
    expect(knew!.measures).toMatchObject([{ readings: 2, byKnowers: 1, unknown: 0 }])
    expect(knew!.knowers.map(({ name, code }) => [name, code]).sort()).toEqual(
      [
        [bakery.late.name, trial.batches[1]!.code],
        [bakery.head.name, trial.batches[0]!.code],
      ].sort(),
    )
  })

  it('marks the correction of whoever had opened the key, and no other', async () => {
    const [first, second] = [await read(1, bakery.early, 0, 1), await read(1, bakery.early, 0, 2)]
    await correct(2, bakery.early, first, 1)
    await openTheKey(at(3, bakery.head), trial.trialId)
    await correct(4, bakery.head, second, 2)
    await close()
    const { corrections } = (await result()).conduct
    expect(corrections.map(({ who, knewKey }) => [who, knewKey])).toEqual([
      [bakery.early.name, false],
      [bakery.head.name, true],
    ])
  })
})
