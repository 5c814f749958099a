import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { readCount } from '@/lib/documents/count/read-count'
import { hashOfText } from '@/lib/documents/hash-of-text'
import { takeEntries } from '@/lib/kitchen/intake/take-entries'
import { beginBatch } from '@/lib/kitchen/shifts/begin-batch'
import { countContentText } from '@/lib/kitchen/shifts/count-content.input'
import { countPieces } from '@/lib/kitchen/shifts/count-pieces'
import { getBatch } from '@/lib/kitchen/shifts/get-batch'
import { logCountInput } from '@/lib/kitchen/shifts/log-count.input'
import { getFloor } from '@/lib/kitchen/stations/get-floor'
import { makeApprovedTrial, type ApprovedTrial } from '../../support/approved-trial'
import { callerOf, makeBakery, refusalOf, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { connected, freshDatabase, type FreshDatabase } from '../../support/database'

let database: FreshDatabase
let bakery: TestBakery
let neighbour: TestBakery
let trial: ApprovedTrial
let batchId: string
const at = (minutes: number) => new Date(testNow.getTime() + minutes * 60_000)

beforeAll(async () => {
  database = await freshDatabase()
  bakery = await makeBakery('Mill Row')
  neighbour = await makeBakery('Next Door')
})
afterAll(() => database.drop())
beforeEach(async () => {
  trial = await makeApprovedTrial(bakery)
  batchId = trial.batches[0]!.batchId
  valueOf(await beginBatch.call(bakery.early.caller, { batchId, seenRevision: 1, cleanDownDone: false }))
})

const entry = (more: object = {}) => ({
  kind: 'count',
  id: uuid(),
  batchId,
  made: 4,
  good: 4,
  takenAt: testNow.toISOString(),
  ...more,
})
const sendAt = async (now: Date, entries: object[], who = bakery.early) =>
  valueOf(await takeEntries.call(callerOf(who.sessionSecret, now), { entries })).entries
const send = (entries: object[], who = bakery.early) => sendAt(testNow, entries, who)
const rowOf = () => db().batch.findFirstOrThrow({ where: { bakeryId: bakery.bakeryId, id: batchId } })
const refused = (path: string, code: string) => ({ outcome: 'refused', refusal: { problems: [{ path, code }] } })

describe('a count of pieces from outside', () => {
  it('is kept once however often it is sent, and answered by the hash of its one text', async () => {
    const one = entry({ good: 3, sampled: 1, sold: 1, given: 1, wasted: 1 })
    const { kind: _, ...content } = one
    const text = countContentText(logCountInput.parse(content))
    const hash = hashOfText(text)
    expect(readCount(text, hash)).toMatchObject({ outcome: 'read', format: 1 })
    expect(await send([one, one])).toMatchObject([
      { outcome: 'kept', id: one.id, hash, isAgain: false },
      { outcome: 'kept', id: one.id, hash, isAgain: true },
    ])
    expect(await send([one])).toMatchObject([{ outcome: 'kept', isAgain: true, hash }])
    expect(await db().pieceCount.findMany({ where: { bakeryId: bakery.bakeryId, batchId } })).toMatchObject([
      { made: 4, good: 3, sampled: 1, sold: 1, given: 1, wasted: 1, personId: bakery.early.personId },
    ])
    expect(await rowOf()).toMatchObject({ piecesMade: 4, piecesGood: 3 })
  })

  it('that is sent five times at one moment is kept once', async () => {
    const one = entry()
    const answers = (await Promise.all([1, 2, 3, 4, 5].map(() => send([one])))).flat()
    expect(answers.map(({ outcome }) => outcome)).toEqual(Array(5).fill('kept'))
    expect(answers.filter((answer) => answer.outcome === 'kept' && !answer.isAgain)).toHaveLength(1)
  })

  it('under the number of another one overwrites nothing', async () => {
    const one = entry()
    expect(await send([one, { ...one, made: 9 }, entry({ made: 5 })])).toMatchObject([
      { outcome: 'kept' },
      { outcome: 'refused', refusal: { code: 'count-clash' } },
      { outcome: 'kept' },
    ])
  })

  it.each([
    ['more good ones than were made', { good: 5 }, 'good', 'more-than-made'],
    ['more gone than were made', { sampled: 2, sold: 1, given: 1, wasted: 1 }, 'wasted', 'more-gone'],
    ['less than nothing', { sold: -1 }, 'sold', 'too-small'],
    ['a part of one', { sold: 0.5 }, 'sold', 'not-whole'],
    ['more than any dough makes', { made: 10_001 }, 'made', 'too-big'],
    ['no number', { given: 'two' }, 'given', 'not-a-number'],
  ])('of %s is refused there, and nothing of it is kept', async (_, more, path, code) => {
    expect(await send([entry(more)])).toMatchObject([refused(path, code)])
    expect(await db().pieceCount.count({ where: { bakeryId: bakery.bakeryId, batchId } })).toBe(0)
    expect(await rowOf()).toMatchObject({ piecesMade: null, revision: 2 })
  })

  it('is of a dough of this bakery that was begun, while its trial is open', async () => {
    const waits = trial.batches[1]!.batchId
    expect(await send([entry({ batchId: waits }), entry({ batchId: uuid() })])).toMatchObject([
      { outcome: 'refused', refusal: { code: 'batch-not-begun' } },
      { outcome: 'refused', refusal: { code: 'not-found' } },
    ])
    expect(await send([entry()], neighbour.early)).toMatchObject([
      { outcome: 'refused', refusal: { code: 'not-found' } },
    ])
    await db().trial.update({
      where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: trial.trialId } },
      data: { state: 'stopped' },
    })
    expect(await send([entry()])).toMatchObject([{ outcome: 'refused', refusal: { code: 'trial-stopped' } }])
  })

  it('stays as it was kept, whoever asks', async () => {
    const one = entry()
    await send([one])
    for (const statement of [`UPDATE piece_count SET sold = 1 WHERE id = $1`, `DELETE FROM piece_count WHERE id = $1`])
      await expect(connected(database.ownerUrl, (client) => client.query(statement, [one.id]))).rejects.toMatchObject({
        code: 'EV001',
      })
  })
})

describe('of several counts of a dough', () => {
  it('the latest stands, in whatever order tablets bring them, and every one stays', async () => {
    const of = (minute: number, made: number) => entry({ made, good: made, takenAt: at(minute).toISOString() })
    const [first, second, third] = [of(1, 4), of(2, 3), of(3, 2)]
    expect(await sendAt(at(10), [third])).toMatchObject([{ outcome: 'kept' }])
    const { revision } = await rowOf()
    expect(await sendAt(at(10), [first, second])).toMatchObject([{ outcome: 'kept' }, { outcome: 'kept' }])
    // What came late changes nothing, so nobody's form is out of date by it.
    expect(await rowOf()).toMatchObject({ piecesMade: 2, piecesGood: 2, revision })
    expect(await db().pieceCount.count({ where: { bakeryId: bakery.bakeryId, batchId } })).toBe(3)
    expect(valueOf(await getBatch.call(bakery.late.caller, { batchId })).count).toMatchObject({ made: 2, who: 'Esi' })
    const floor = valueOf(await getFloor.call(bakery.late.caller, {}))
    expect(floor.doughs.find(({ id }) => id === batchId)?.count).toMatchObject({ made: 2, id: third.id })
  })

  it('one from the desk is one of them, with what became of the pieces', async () => {
    await sendAt(at(1), [entry({ takenAt: at(1).toISOString() })])
    const { revision } = await rowOf()
    const desk = callerOf(bakery.late.sessionSecret, at(5))
    const counted = { batchId, seenRevision: revision, piecesMade: 3, piecesGood: 3 }
    expect(refusalOf(await countPieces.call(desk, { ...counted, sold: 2, wasted: 2 }))).toBe('invalid wasted:more-gone')
    valueOf(await countPieces.call(desk, { ...counted, sold: 2, wasted: 1 }))
    await sendAt(at(6), [entry({ takenAt: at(4).toISOString(), made: 9, good: 9 })])
    expect(await rowOf()).toMatchObject({ piecesMade: 3, piecesGood: 3 })
    expect(valueOf(await getBatch.call(bakery.early.caller, { batchId })).count).toMatchObject({
      made: 3,
      sold: 2,
      wasted: 1,
      given: null,
      who: 'Lars',
    })
    expect(refusalOf(await countPieces.call(desk, counted))).toBe('stale')
    // What became of them is somebody's word too: who did not see it does not put another in its place.
    const now = { ...counted, seenRevision: (await rowOf()).revision }
    const later = callerOf(bakery.late.sessionSecret, at(7))
    valueOf(await countPieces.call(later, { ...now, sold: 1 }))
    expect(refusalOf(await countPieces.call(later, { ...now, sold: 3 }))).toBe('stale')
  })
})
