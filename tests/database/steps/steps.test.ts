import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { hashOfText } from '@/lib/documents/hash-of-text'
import { readStep } from '@/lib/documents/step/read-step'
import { takeEntries } from '@/lib/kitchen/intake/take-entries'
import { beginBatch } from '@/lib/kitchen/shifts/begin-batch'
import { moveBatch } from '@/lib/kitchen/shifts/move-batch'
import { undoMove } from '@/lib/kitchen/shifts/undo-move'
import { logStepInput } from '@/lib/kitchen/steps/log-step.input'
import { stepContentText } from '@/lib/kitchen/steps/step-content.input'
import { makeApprovedTrial, type ApprovedTrial } from '../../support/approved-trial'
import { callerOf, makeBakery, refusalOf, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { connected, freshDatabase, type FreshDatabase } from '../../support/database'
import { atStation, enrolledStation, givePin, tokenAt } from '../../support/stations'

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
  kind: 'step',
  id: uuid(),
  batchId,
  step: 'mixed',
  isDone: true,
  agoS: 0,
  takenAt: testNow.toISOString(),
  ...more,
})
const sendAs = async (caller: Parameters<typeof takeEntries.call>[0], entries: object[]) =>
  valueOf(await takeEntries.call(caller, { entries })).entries
const send = (entries: object[], who = bakery.early) => sendAs(who.caller, entries)
const kept = (id: string) => db().step.findFirst({ where: { bakeryId: bakery.bakeryId, id } })
const refused = (path: string, code: string) => ({ outcome: 'refused', refusal: { problems: [{ path, code }] } })

describe('a step from outside', () => {
  it('is kept once however often it is sent, and answered by the hash of its one text', async () => {
    const oven = { place: ' Deck 2 ', setTempC: 230, readTempC: 228.5, steam: true, beside: 'Rolls' }
    const one = entry({ step: 'in_oven', ...oven })
    const { kind: _, ...content } = one
    const text = stepContentText(logStepInput.parse(content))
    const hash = hashOfText(text)
    expect(readStep(text, hash)).toMatchObject({ outcome: 'read', format: 1 })
    expect(await send([one, one])).toMatchObject([
      { outcome: 'kept', id: one.id, hash, isAgain: false },
      { outcome: 'kept', id: one.id, hash, isAgain: true },
    ])
    expect(await send([one])).toMatchObject([{ outcome: 'kept', isAgain: true, hash }])
    expect(await db().step.count({ where: { bakeryId: bakery.bakeryId, batchId } })).toBe(1)
    expect(await kept(one.id)).toMatchObject({ ...oven, place: 'Deck 2', personId: bakery.early.personId })
  })

  it('that is sent five times at one moment is kept once, and each is told that it is in the book', async () => {
    const one = entry()
    const answers = (await Promise.all([1, 2, 3, 4, 5].map(() => send([one])))).flat()
    expect(answers.map(({ outcome }) => outcome)).toEqual(Array(5).fill('kept'))
    expect(answers.filter((answer) => answer.outcome === 'kept' && !answer.isAgain)).toHaveLength(1)
  })

  it('under the number of another one overwrites nothing, and holds up nobody else', async () => {
    const one = entry()
    await send([one])
    expect(await send([{ ...one, agoS: 60 }, entry({ step: 'folded' })])).toMatchObject([
      { outcome: 'refused', refusal: { code: 'step-clash' } },
      { outcome: 'kept' },
    ])
    const other = { ...one, batchId: trial.batches[1]!.batchId }
    valueOf(
      await beginBatch.call(bakery.early.caller, { batchId: other.batchId, seenRevision: 1, cleanDownDone: true }),
    )
    expect(await send([other])).toMatchObject([{ outcome: 'refused', refusal: { code: 'step-clash' } }])
    expect(await kept(one.id)).toMatchObject({ agoS: 0, batchId })
  })

  it('is kept in whatever order it comes, and twice where two said it', async () => {
    expect(await send([entry({ step: 'in_oven' }), entry({ step: 'mixed' }), entry({ step: 'mixed' })])).toMatchObject([
      { outcome: 'kept' },
      { outcome: 'kept' },
      { outcome: 'kept' },
    ])
  })

  it('is of a dough of this bakery that was begun', async () => {
    const waits = trial.batches[1]!.batchId
    expect(await send([entry({ batchId: waits }), entry({ batchId: uuid() })])).toMatchObject([
      { outcome: 'refused', refusal: { code: 'batch-not-begun' } },
      { outcome: 'refused', refusal: { code: 'not-found' } },
    ])
    expect(await send([entry()], neighbour.early)).toMatchObject([
      { outcome: 'refused', refusal: { code: 'not-found' } },
    ])
  })

  it('is kept of a trial that has ended, and moves nothing there', async () => {
    await db().trial.update({
      where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: trial.trialId } },
      data: { state: 'stopped' },
    })
    expect(await send([entry()])).toMatchObject([{ outcome: 'kept' }])
  })

  it.each([
    ['an oven without a dough in it', { place: 'Deck 2' }, 'place', 'not-of-this-step'],
    ['a setting where nothing is moulded', { step: 'scored', setting: '5' }, 'setting', 'not-of-this-step'],
    ['steam in the retarder', { step: 'retarding_begun', steam: false }, 'steam', 'not-of-this-step'],
    ['an oven of 600 °C', { step: 'in_oven', setTempC: 600 }, 'setTempC', 'too-big'],
    ['a step that nobody knows', { step: 'kneaded' }, 'step', 'wrong-choice'],
    ['what was not done, of nothing', { isDone: false }, 'isDone', 'done-unless-corrected'],
    ['a reason without anything wrong', { reason: 'x' }, 'reason', 'reason-without-correction'],
    ['a correction without a reason', { supersedesId: uuid() }, 'reason', 'missing'],
    ['two days ago', { agoS: 172_800 }, 'agoS', 'too-big'],
    ['what is to come', { agoS: -60 }, 'agoS', 'too-small'],
    ['no time', { takenAt: 'noon' }, 'takenAt', 'wrong-form'],
    ['what turns the text around', { step: 'in_oven', beside: 'Good\u202edaB' }, 'beside', 'unreadable'],
  ])('of %s is refused there, and nothing of it is kept', async (_, more, path, code) => {
    const one = entry(more)
    expect(await send([one])).toMatchObject([refused(path, code)])
    expect(await kept(one.id)).toBeNull()
  })
})

describe('the clock of a device', () => {
  it.each([
    ['right', {}, 0],
    ['an hour ahead, as it knows', { takenAt: at(60).toISOString(), clockAheadS: -3600 }, 0],
    ['a day ahead, as nobody knows', { takenAt: at(1440).toISOString() }, 0],
    ['right, and somebody is late by ten minutes', { takenAt: at(20).toISOString(), agoS: 600 }, 10],
  ])('that is %s', async (_, more, minute) => {
    const one = entry(more)
    const later = 'takenAt' in more && 'agoS' in more ? at(20) : testNow
    await sendAs(callerOf(bakery.early.sessionSecret, later), [one])
    expect((await kept(one.id))?.at).toEqual(at(minute))
  })
})

describe('a step that was entered wrongly', () => {
  const wrong = (of: { id: string }, more: object = {}) => entry({ supersedesId: of.id, reason: 'Too early', ...more })

  it('stays, with what takes its place and why; what two say both stands', async () => {
    const one = entry()
    const [right, not] = [wrong(one, { agoS: 60 }), wrong(one, { isDone: false })]
    expect(await send([one, right, not])).toMatchObject([{ outcome: 'kept' }, { outcome: 'kept' }, { outcome: 'kept' }])
    expect(await kept(one.id)).toMatchObject({ supersedesId: null, reason: null })
    expect(await kept(not.id)).toMatchObject({ supersedesId: one.id, reason: 'Too early', isDone: false })
  })

  it('is of the same step of the same dough', async () => {
    const one = entry()
    await send([one])
    expect(await send([wrong(one, { step: 'folded' }), wrong({ id: uuid() })])).toMatchObject([
      refused('supersedesId', 'wrong-choice'),
      { outcome: 'refused', refusal: { code: 'not-found' } },
    ])
  })

  it('is put right by whoever entered it, or who may correct any', async () => {
    const one = entry()
    await send([one])
    expect(await send([wrong(one)], bakery.late)).toMatchObject([
      { outcome: 'refused', refusal: { code: 'correction-not-yours' } },
    ])
    expect(await send([wrong(one)], bakery.head)).toMatchObject([{ outcome: 'kept' }])
  })

  it('wants the PIN at a tablet once it is no slip any more', async () => {
    await givePin(bakery.early)
    const station = await enrolledStation(bakery)
    const token = await tokenAt(station, bakery.early)
    const one = entry()
    await sendAs(atStation(station, token), [one])
    expect(await sendAs(atStation(station, token, at(9)), [wrong(one)])).toMatchObject([{ outcome: 'kept' }])
    const later = wrong(one, { isDone: false })
    expect(await sendAs(atStation(station, token, at(11)), [later])).toMatchObject([
      { outcome: 'refused', refusal: { code: 'correction-wants-pin' } },
    ])
  })
})

describe('the book of steps', () => {
  it('stays as it was kept, whoever asks', async () => {
    const one = entry()
    await send([one])
    for (const statement of [`UPDATE step SET is_done = true WHERE id = $1`, `DELETE FROM step WHERE id = $1`])
      await expect(connected(database.ownerUrl, (client) => client.query(statement, [one.id]))).rejects.toMatchObject({
        code: 'EV001',
      })
  })

  it('lets nobody take a beginning back that a step was built on', async () => {
    await send([entry()])
    const undo = async (seenRevision: number) =>
      refusalOf(await undoMove.call(bakery.early.caller, { batchId, seenRevision }))
    expect([await undo(2), await undo(3)]).toEqual(['stale', 'undo-built-on'])
  })

  it('names a step in the record with its dough and its hash', async () => {
    const one = entry({ step: 'in_oven', beside: 'Baguettes' })
    const [answer] = await send([one])
    const last = await db().auditEntry.findFirstOrThrow({
      where: { bakeryId: bakery.bakeryId },
      orderBy: { number: 'desc' },
    })
    expect(last.entryText).toContain(`"step":"in_oven"`)
    expect(last.entryText).toContain(answer?.outcome === 'kept' ? answer.hash : 'kept')
    expect(last.entryText).not.toContain('Baguettes')
  })
})

describe('a dough goes with its steps', () => {
  const dough = async () => {
    const { state, bakedAt } = await db().batch.findUniqueOrThrow({
      where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: batchId } },
      select: { state: true, bakedAt: true },
    })
    return [state, bakedAt?.toISOString() ?? null]
  }
  const iso = (minutes: number) => at(minutes).toISOString()
  const callerAt = (minutes: number) => callerOf(bakery.early.sessionSecret, at(minutes))
  const out = (more: object = {}) => entry({ step: 'out_of_oven', takenAt: iso(20), ...more })
  const move = async (to: string, minutes: number) => {
    const { revision } = await db().batch.findUniqueOrThrow({
      where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: batchId } },
    })
    return moveBatch.call(callerAt(minutes), { batchId, to, seenRevision: revision })
  }

  it('into work and out of the oven, at the moment of the step and not of its coming', async () => {
    expect(await dough()).toEqual(['weighing', null])
    await send([entry()])
    expect(await dough()).toEqual(['in_work', null])
    const one = out()
    const [answer] = await sendAs(callerAt(28), [one])
    expect(answer).toMatchObject({ outcome: 'kept' })
    expect(await dough()).toEqual(['baked', iso(20)])
    const last = await db().auditEntry.findFirstOrThrow({
      where: { bakeryId: bakery.bakeryId },
      orderBy: { number: 'desc' },
    })
    expect(JSON.parse(last.entryText)).toMatchObject({
      after: { kept: [{ id: one.id, state: 'baked', bakedAt: iso(20) }] },
    })
  })

  it('back again with a step that had not been done, and to where a corrected one says', async () => {
    const [one, better] = [out(), out({ takenAt: iso(22), agoS: 600, reason: 'It was earlier.' })]
    await sendAs(callerAt(20), [one])
    await sendAs(callerAt(22), [{ ...better, supersedesId: one.id }])
    expect(await dough()).toEqual(['baked', iso(12)])
    const not = {
      ...out({ takenAt: iso(23), isDone: false, reason: 'It was another dough.' }),
      supersedesId: better.id,
    }
    await sendAs(callerAt(23), [not])
    expect(await dough()).toEqual(['in_work', null])
    await sendAs(callerAt(27), [out({ takenAt: iso(27) })])
    expect(await dough()).toEqual(['baked', iso(27)])
  })

  it('of two that say it the earlier counts, whichever came first, and several in one request are as if one by one', async () => {
    await sendAs(callerAt(26), [out({ takenAt: iso(24) }), out(), out({ takenAt: iso(21) })])
    expect(await dough()).toEqual(['baked', iso(20)])
  })

  it('what the desk said of a dough without a step stays when a step of it had not been done', async () => {
    await send([entry()])
    valueOf(await move('baked', 25))
    expect(await dough()).toEqual(['baked', iso(25)])
    const one = entry({ step: 'in_oven', takenAt: iso(26) })
    await sendAs(callerAt(26), [one])
    await sendAs(callerAt(27), [
      entry({ step: 'in_oven', takenAt: iso(27), isDone: false, reason: 'Slip.', supersedesId: one.id }),
    ])
    expect(await dough()).toEqual(['baked', iso(25)])
  })

  it('a dough that is out, and one of a trial that has ended, stay as they are', async () => {
    await send([entry()])
    valueOf(await moveBatch.call(callerAt(1), { batchId, to: 'lost', why: 'Dropped.', seenRevision: 3 }))
    await sendAs(callerAt(20), [out()])
    expect(await dough()).toEqual(['lost', null])
    const other = trial.batches[1]!
    batchId = other.batchId
    valueOf(await beginBatch.call(callerAt(21), { batchId, seenRevision: 1, cleanDownDone: other.cleanDownBefore }))
    await connected(database.superUrl, (client) =>
      client.query(`UPDATE trial SET state = 'stopped', closed_at = now() WHERE id = $1`, [trial.trialId]),
    )
    expect(await sendAs(callerAt(22), [out({ takenAt: iso(22) })])).toMatchObject([{ outcome: 'kept' }])
    expect(await dough()).toEqual(['weighing', null])
  })
})
