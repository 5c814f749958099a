import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { clockToleranceMs } from '@/lib/kitchen/conduct/odd-time'
import { correctReading } from '@/lib/kitchen/readings/correct-reading'
import { logReading } from '@/lib/kitchen/readings/log-reading'
import { getResult } from '@/lib/kitchen/amendments/get-result'
import { beginBatch } from '@/lib/kitchen/shifts/begin-batch'
import { noteCause } from '@/lib/kitchen/shifts/note-cause'
import { makeApprovedTrial, type ApprovedTrial } from '../../support/approved-trial'
import { callerOf, makeBakery, testNow, valueOf, type TestBakery, type TestPerson } from '../../support/bakery'
import { freshDatabase, type FreshDatabase } from '../../support/database'

let database: FreshDatabase
let bakery: TestBakery
let trial: ApprovedTrial
let batchId: string
let code: string

beforeAll(async () => {
  database = await freshDatabase()
})
afterAll(() => database.drop())
beforeEach(async () => {
  bakery = await makeBakery('Mill Row')
  trial = await makeApprovedTrial(bakery)
  ;({ batchId, code } = trial.batches[0]!)
  valueOf(await beginBatch.call(bakery.early.caller, { batchId, seenRevision: 1, cleanDownDone: false }))
})

const after = (minute: number) => new Date(testNow.getTime() + minute * 60_000)
const at = (minute: number, who: TestPerson = bakery.early) => callerOf(who.sessionSecret, after(minute))
const conduct = async () => valueOf(await getResult.call(at(29), { trialId: trial.trialId })).conduct
async function read(minute: number, change: Record<string, unknown> = {}) {
  const id = uuid()
  valueOf(
    await logReading.call(at(minute), {
      id,
      batchId,
      measureId: trial.measures['loaf-volume'],
      piece: 1,
      repeat: 1,
      value: '1900',
      unit: 'mL',
      takenAt: after(minute).toISOString(),
      ...change,
    }),
  )
  return id
}
async function correct(minute: number, supersedesId: string, change: Record<string, unknown> = {}, who?: TestPerson) {
  const id = uuid()
  const sent = { id, supersedesId, piece: 1, repeat: 1, value: '1930', unit: 'mL', reason: 'typed it wrong', ...change }
  valueOf(await correctReading.call(at(minute, who), sent))
  return id
}

describe('what is told of how the readings came about', () => {
  it('is nothing where everybody kept to the plan', async () => {
    await read(1)
    await read(2, { repeat: 2 })
    expect(await conduct()).toEqual({
      corrections: [],
      causes: [],
      foundCauses: [],
      repairs: [],
      furtherRepeats: [],
      oddTimes: [],
      oddDays: [],
      fromFile: 0,
    })
  })

  it('is every correction, also of a correction: old, new, who, when, why, and whether it was an own slip', async () => {
    const first = await read(1)
    const second = await correct(11, first)
    await correct(28, second, { value: '1.94', unit: 'L', piece: 2, reason: 'the other loaf' }, bakery.head)
    expect((await conduct()).corrections).toMatchObject([
      {
        code,
        measure: { code: 'loaf-volume' },
        piece: 1,
        before: { value: '1900', unit: 'mL', piece: 1, repeat: 1 },
        after: { value: '1930', unit: 'mL', piece: 1, repeat: 1 },
        who: 'Esi',
        at: after(11),
        reason: 'typed it wrong',
        isOwnSlip: true,
      },
      {
        piece: 1,
        before: { value: '1930' },
        after: { value: '1.94', unit: 'L', piece: 2, repeat: 1 },
        who: 'Henk',
        at: after(28),
        reason: 'the other loaf',
        isOwnSlip: false,
      },
    ])
  })

  it('is a third reading where two disagreed, a note of what happened, and odd times of what holds', async () => {
    const ahead = (minute: number, ms: number) => new Date(after(minute).getTime() + ms).toISOString()
    await read(1, { takenAt: ahead(1, clockToleranceMs) })
    await read(2, { repeat: 2, value: '2000', takenAt: ahead(2, clockToleranceMs + 1) })
    await read(3, { repeat: 3, takenAt: new Date(testNow.getTime() - clockToleranceMs - 1).toISOString() })
    await read(4, { piece: 2, takenAt: new Date(testNow.getTime() - clockToleranceMs).toISOString() })
    valueOf(await noteCause.call(at(5), { batchId, what: 'the oven door stood open', noticedMinAgo: 2 }))
    expect(await conduct()).toMatchObject({
      furtherRepeats: [{ code, measure: { code: 'loaf-volume' }, piece: 1, factorLevel: null, have: 3, of: 2 }],
      oddTimes: [
        { code, kind: 'in-the-future', count: 1 },
        { code, kind: 'before-begun', count: 1 },
      ],
      causes: [{ code, what: 'the oven door stood open', noticedAt: after(3), at: after(5), who: 'Esi' }],
    })
  })
})
