import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { correctReading } from '@/lib/kitchen/readings/correct-reading'
import { logReading } from '@/lib/kitchen/readings/log-reading'
import { beginBatch } from '@/lib/kitchen/shifts/begin-batch'
import { getReadingLog } from '@/lib/kitchen/readings/get-reading-log'
import { getBatch } from '@/lib/kitchen/shifts/get-batch'
import { moveBatch } from '@/lib/kitchen/shifts/move-batch'
import { makeApprovedTrial, type ApprovedTrial } from '../../support/approved-trial'
import { callerOf, makeBakery, refusalOf, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { connected, freshDatabase, type FreshDatabase } from '../../support/database'

let database: FreshDatabase
let bakery: TestBakery
let neighbour: TestBakery
let trial: ApprovedTrial
let batchId: string

const after = (minutes: number) => new Date(testNow.getTime() + minutes * 60_000)

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

/** A reading of the loaf weight of the first piece, changed as the test says. */
const entry = (change: Record<string, unknown> = {}) => ({
  id: uuid(),
  batchId,
  measureId: trial.measures['loaf-mass'],
  piece: 1,
  repeat: 1,
  value: '412.5',
  unit: 'g',
  takenAt: testNow.toISOString(),
  ...change,
})
const log = (change: Record<string, unknown> = {}, caller = bakery.early.caller) =>
  logReading.call(caller, entry(change))
const rows = () =>
  db().reading.findMany({
    where: { bakeryId: bakery.bakeryId, batchId },
    orderBy: [{ receivedAt: 'asc' }, { id: 'asc' }],
  })
const entriesOf = (action: string, targetId: string) =>
  db().auditEntry.count({ where: { bakeryId: bakery.bakeryId, action, targetId } })

describe('logging a reading', () => {
  it('keeps what was entered and what it comes to, with one entry in the record', async () => {
    const taken = after(-30)
    const answer = valueOf(await log({ value: '0.425', unit: 'kg', takenAt: taken.toISOString() }))
    expect(answer).toMatchObject({
      isAgain: false,
      outOfRange: false,
      needs: null,
      hash: expect.stringMatching(/^[0-9a-f]{64}$/),
    })
    expect(await rows()).toMatchObject([
      {
        id: answer.readingId,
        value: 425,
        valueEntered: '0.425',
        unitEntered: 'kg',
        personId: bakery.early.personId,
        takenAt: taken,
        receivedAt: testNow,
        contentHash: answer.hash,
      },
    ])
    expect(await entriesOf('readings.log-reading', answer.readingId)).toBe(1)
  })

  it('keeps one that is sent twice once, and answers the same', async () => {
    const same = entry()
    const first = valueOf(await logReading.call(bakery.early.caller, same))
    const again = valueOf(await logReading.call(bakery.late.caller, same))
    expect(again).toEqual({ ...first, isAgain: true })
    expect(await rows()).toHaveLength(1)
  })

  it('keeps one that is sent several times at the same moment once', async () => {
    const same = entry()
    const answers = await Promise.all(Array.from({ length: 5 }, () => logReading.call(bakery.early.caller, same)))
    expect(new Set(answers.map((answer) => valueOf(answer).hash)).size).toBe(1)
    expect(answers.filter((answer) => !valueOf(answer).isAgain)).toHaveLength(1)
    expect(await rows()).toHaveLength(1)
  })

  it('refuses another content under the same id and overwrites nothing', async () => {
    const first = entry()
    valueOf(await logReading.call(bakery.early.caller, first))
    for (const change of [{ value: '413' }, { piece: 2 }, { takenAt: after(1).toISOString() }]) {
      expect(refusalOf(await logReading.call(bakery.early.caller, { ...first, ...change }))).toBe('reading-clash')
    }
    const [, other] = trial.batches
    valueOf(
      await beginBatch.call(bakery.early.caller, { batchId: other!.batchId, seenRevision: 1, cleanDownDone: true }),
    )
    const contested = uuid()
    const both = await Promise.all([batchId, other!.batchId].map((id) => log({ id: contested, batchId: id, piece: 3 })))
    expect(both.filter(({ ok }) => ok)).toHaveLength(1)
    expect(both.flatMap((result) => (result.ok ? [] : [result.refusal.code]))).toEqual(['reading-clash'])
    expect((await rows()).filter(({ id }) => id === first.id)).toMatchObject([{ valueEntered: '412.5' }])
  })

  it('lets one of two devices that read the same thing at the same moment in', async () => {
    const both = await Promise.all([log(), log({ value: '500' })])
    expect(both.filter(({ ok }) => ok)).toHaveLength(1)
    expect(refusalOf(both.find(({ ok }) => !ok)!)).toBe('reading-there')
    expect(await rows()).toHaveLength(1)
  })

  it('asks for the second reading, and for a third when two disagree', async () => {
    const volume = { measureId: trial.measures['loaf-volume'], unit: 'mL' }
    expect(valueOf(await log({ ...volume, value: '1880' })).needs).toBe('repeat')
    expect(valueOf(await log({ ...volume, value: '1940', repeat: 2 })).needs).toBe('third')
    expect(valueOf(await log({ ...volume, value: '1890', repeat: 3 })).needs).toBeNull()
  })

  it('takes no further reading of what is complete, nor one that a correction brings from elsewhere', async () => {
    const volume = { measureId: trial.measures['loaf-volume'], unit: 'mL' }
    valueOf(await log({ ...volume, value: '1880' }))
    expect(refusalOf(await log({ ...volume, value: '1881', repeat: 3 }))).toBe('no-further-repeat')
    const second = entry({ ...volume, value: '1885', repeat: 2 })
    valueOf(await logReading.call(bakery.early.caller, second))
    for (const repeat of [3, 4, 20])
      expect(refusalOf(await log({ ...volume, value: '2400', repeat }))).toBe('no-further-repeat')
    const [ofAnother] = [entry({ ...volume, piece: 2, value: '2400' })]
    valueOf(await logReading.call(bakery.early.caller, ofAnother))
    const moved = (wrong: string, change: object) =>
      correctReading.call(bakery.early.caller, {
        id: uuid(),
        supersedesId: wrong,
        piece: 1,
        repeat: 3,
        value: '2400',
        unit: 'mL',
        reason: 'was the other loaf',
        ...change,
      })
    expect(refusalOf(await moved(ofAnother.id, {}))).toBe('no-further-repeat')
    expect(refusalOf(await moved(second.id, {}))).toBe('no-further-repeat')
    expect(await rows()).toHaveLength(3)
    // A slip is put right where it is, and what then disagrees asks for its third.
    expect(valueOf(await moved(second.id, { repeat: 2, value: '1985' })).needs).toBe('third')
    expect(valueOf(await log({ ...volume, value: '1900', repeat: 3 })).needs).toBeNull()
    expect(refusalOf(await log({ ...volume, value: '1900', repeat: 4 }))).toBe('no-further-repeat')
  })

  it('keeps a value outside its plausible range only when it comes confirmed, and tells it from then on', async () => {
    const odd = await log({ value: '9999' })
    expect(refusalOf(odd)).toBe('odd-reading value:outside-usual')
    expect(odd).toMatchObject({ refusal: { facts: { least: 240, most: 720, unit: 'g' } } })
    expect(await rows()).toEqual([])
    const answer = valueOf(await log({ value: '9999', confirmed: true }))
    expect(answer.outOfRange).toBe(true)
    expect(await rows()).toMatchObject([{ value: 9999, plausibleLeast: 240, plausibleMost: 720 }])
    expect(
      JSON.parse(
        (await db().auditEntry.findFirstOrThrow({ where: { bakeryId: bakery.bakeryId, targetId: answer.readingId } }))
          .entryText,
      ),
    ).toMatchObject({
      after: { outsideAndConfirmed: { least: 240, most: 720 } },
    })
  })

  it.each<[string, string, string, Record<string, unknown>]>([
    ['600 °C in a dough', 'dough-temp', '600', { piece: null, unit: '°C' }],
    ['a loaf of 0 g', 'loaf-mass', '0', {}],
    ['a volume of 99999 mL', 'loaf-volume', '99999', { unit: 'mL' }],
    ['water for ten doughs', 'water-added', '7216', { piece: null }],
    ['a piece of a third of its weight', 'dough-mass', '160', {}],
  ])('does not take %s in one tap', async (_, code, value, change) => {
    expect(refusalOf(await log({ measureId: trial.measures[code], value, ...change }))).toBe(
      'odd-reading value:outside-usual',
    )
    expect(await rows()).toEqual([])
  })

  it('marks what is outside and nothing else, when everything is sent confirmed', async () => {
    const sent = ['239.9', '240', '720', '720.1']
    for (const [i, value] of sent.entries()) valueOf(await log({ value, piece: i + 1, confirmed: true }))
    const shown = valueOf(await getBatch.call(bakery.early.caller, { batchId }))
    expect(shown.readings.filter(({ outside }) => outside).map(({ valueEntered }) => valueEntered)).toEqual([
      '239.9',
      '720.1',
    ])
  })

  it('keeps a confirmed one once, whether it is sent again with its confirmation or without', async () => {
    const odd = entry({ value: '9999', confirmed: true })
    const first = valueOf(await logReading.call(bakery.early.caller, odd))
    for (const confirmed of [true, false, undefined]) {
      expect(valueOf(await logReading.call(bakery.early.caller, { ...odd, confirmed }))).toEqual({
        ...first,
        isAgain: true,
      })
    }
    expect(await rows()).toHaveLength(1)
  })

  it('goes by the volume that recent doughs of the product had, once three are measured', async () => {
    trial = await makeApprovedTrial(bakery, { days: 3 })
    const volume = { measureId: trial.measures['loaf-volume'], unit: 'mL', takenAt: testNow.toISOString() }
    const measured = async (at: number, values: string[]) => {
      const dough = trial.batches[at]!.batchId
      valueOf(await beginBatch.call(bakery.early.caller, { batchId: dough, seenRevision: 1, cleanDownDone: true }))
      for (const [i, value] of values.entries())
        valueOf(await log({ ...volume, batchId: dough, piece: i + 1, value, confirmed: true }))
      await db().batch.update({
        where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: dough } },
        data: { state: 'measured' },
      })
    }
    await measured(0, ['1900', '2000', '99999'])
    await measured(1, ['2000', '2000', '2100'])
    valueOf(
      await beginBatch.call(bakery.early.caller, {
        batchId: trial.batches[2]!.batchId,
        seenRevision: 1,
        cleanDownDone: true,
      }),
    )
    const next = { ...volume, batchId: trial.batches[2]!.batchId }
    valueOf(await log({ ...next, piece: 1, value: '9000' }))
    await measured(3, ['2000', '50'])
    // The medians of the doughs are 1950 (an odd reading does not count), 2000 and 1025; half to one and a half times 1950.
    const odd = await log({ ...next, piece: 2, value: '9000' })
    expect(odd).toMatchObject({ refusal: { code: 'odd-reading', facts: { least: 975, most: 2925, unit: 'mL' } } })
    valueOf(await log({ ...next, piece: 2, value: '2925' }))
  })

  it.each<[string, Record<string, unknown>]>([
    ['invalid value:not-a-number', { value: 'about 400' }],
    ['invalid value:ambiguous-number', { value: '1,412' }],
    ['invalid value:too-small', { value: '-3' }],
    ['invalid unit:unit-not-of-measure', { unit: 'mL' }],
    ['invalid piece:missing', { piece: null }],
    ['invalid piece:too-big', { piece: 5 }],
    ['invalid factorLevel:no-factor', { factorLevel: 'day 3' }],
    ['invalid id:wrong-form', { id: '3b241101-e2bb-4255-8caf-4136c566a962' }],
    ['invalid cost:unknown-field', { cost: 1 }],
  ])('refuses with %s', async (refusal, change) => {
    expect(refusalOf(await log(change))).toBe(refusal)
    expect(await rows()).toEqual([])
  })

  it('takes whatever a clock says, keeps both times, tells an odd one and orders nothing by it', async () => {
    const years = 365 * 24 * 60
    const said = [after(0), after(-6), after(7 * 60), after(-years), after(2 * years)]
    for (const [at, takenAt] of said.entries())
      valueOf(
        await log(
          at === 4
            ? {
                measureId: trial.measures['dough-temp'],
                piece: null,
                value: '26',
                unit: '°C',
                takenAt: takenAt.toISOString(),
              }
            : { piece: at + 1, takenAt: takenAt.toISOString() },
        ),
      )
    const { readings } = valueOf(await getReadingLog.call(bakery.early.caller, { batchId }))
    expect(readings.map(({ takenAt, receivedAt, oddTime }) => ({ takenAt, receivedAt, oddTime }))).toEqual(
      ([null, 'before-begun', 'in-the-future', 'before-begun', 'in-the-future'] as const).map((oddTime, at) => ({
        takenAt: said[at],
        receivedAt: testNow,
        oddTime,
      })),
    )
    expect(valueOf(await getBatch.call(bakery.early.caller, { batchId })).begunAt).toEqual(testNow)
  })

  it('takes measures of the batch without a piece, and none that is worked out', async () => {
    valueOf(await log({ measureId: trial.measures['dough-temp'], piece: undefined, value: '78.8', unit: '°F' }))
    expect(await rows()).toMatchObject([{ value: 26, piece: null }])
    expect(refusalOf(await log({ measureId: trial.measures['dough-temp'], value: '26', unit: '°C' }))).toBe(
      'invalid piece:not-of-a-piece',
    )
    expect(refusalOf(await log({ measureId: trial.measures['specific-volume'], value: '4', unit: 'mL/g' }))).toBe(
      'invalid measureId:measure-worked-out',
    )
  })

  it('asks for the level where the trial sets something apart within a batch', async () => {
    trial = await makeApprovedTrial(bakery, { factor: { name: 'Storage', levels: ['day 1', 'day 3'] } })
    batchId = trial.batches[0]!.batchId
    valueOf(await beginBatch.call(bakery.early.caller, { batchId, seenRevision: 1, cleanDownDone: false }))
    expect(refusalOf(await log())).toBe('invalid factorLevel:missing')
    expect(refusalOf(await log({ factorLevel: 'day 9' }))).toBe('invalid factorLevel:wrong-choice')
    valueOf(await log({ factorLevel: 'day 1' }))
    expect(refusalOf(await log({ factorLevel: 'day 3' }))).toBe('invalid factorLevel:not-its-level')
    const second = valueOf(await log({ factorLevel: 'day 3', piece: 2 }))
    // A piece of another level: the correction moves the reading to that level.
    const moved = {
      id: uuid(),
      supersedesId: second.readingId,
      piece: 3,
      repeat: 1,
      value: '410',
      unit: 'g',
      reason: 'other piece',
    }
    valueOf(await correctReading.call(bakery.head.caller, moved))
    expect(await rows()).toMatchObject([
      { piece: 1, factorLevel: 'day 1' },
      { piece: 2, factorLevel: 'day 3' },
      { piece: 3, factorLevel: 'day 1' },
    ])
  })

  it('is not for batches that nobody began, nor for trials that are over', async () => {
    expect(refusalOf(await log({ batchId: trial.batches[1]!.batchId }))).toBe('batch-not-begun')
    const kept = entry()
    valueOf(await logReading.call(bakery.early.caller, kept))
    const state = (to: 'closed' | 'stopped') =>
      db().trial.update({
        where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: trial.trialId } },
        data: { state: to },
      })
    await state('closed')
    expect(refusalOf(await log({ piece: 2 }))).toBe('trial-closed')
    // What is in the book already is answered the same, or a device would never let go of it.
    expect(valueOf(await logReading.call(bakery.early.caller, kept)).isAgain).toBe(true)
    await expect(state('stopped')).rejects.toThrow(/EV003/)
  })

  it('still takes what was read on a batch that was lost', async () => {
    valueOf(await moveBatch.call(bakery.early.caller, { batchId, seenRevision: 2, to: 'lost', why: 'the tin fell' }))
    valueOf(await log({ measureId: trial.measures['dough-temp'], piece: null, value: '26', unit: '°C' }))
  })

  it('finds nothing of the bakery next door', async () => {
    expect(refusalOf(await log({}, neighbour.owner.caller))).toBe('not-found')
    const theirs = await db().measure.findFirstOrThrow({ where: { bakeryId: neighbour.bakeryId, code: 'loaf-mass' } })
    expect(refusalOf(await log({ measureId: theirs.id }))).toBe('not-found')
    expect(refusalOf(await log({}, callerOf(null)))).toBe('not-signed-in')
  })
})

describe('correcting a reading', () => {
  const correct = (supersedesId: string, change: Record<string, unknown> = {}, caller = bakery.early.caller) =>
    correctReading.call(caller, {
      id: uuid(),
      supersedesId,
      piece: 1,
      repeat: 1,
      value: '421.5',
      unit: 'g',
      reason: 'typed it wrong',
      ...change,
    })
  const logged = async (change: Record<string, unknown> = {}) => valueOf(await log(change)).readingId

  it('puts a new one in its place, keeps the wrong one, and says why in the record', async () => {
    const wrong = await logged()
    const right = valueOf(await correct(wrong)).readingId
    expect(await rows()).toMatchObject([
      { id: wrong, value: 412.5, supersedesId: null },
      { id: right, value: 421.5, supersedesId: wrong, reason: 'typed it wrong', takenAt: testNow },
    ])
    expect(await entriesOf('readings.correct-reading', wrong)).toBe(1)
    const { readings, figures } = valueOf(await getBatch.call(bakery.early.caller, { batchId }))
    expect(readings.map(({ id, holds, mayCorrect }) => [id, holds, mayCorrect])).toEqual([
      [wrong, false, false],
      [right, true, true],
    ])
    expect(figures?.means['loaf-mass']?.mean).toBe(421.5)
  })

  it('is kept once when it is sent twice, and clashes with another one under its id', async () => {
    const wrong = await logged()
    const id = uuid()
    expect(valueOf(await correct(wrong, { id })).isAgain).toBe(false)
    expect(valueOf(await correct(wrong, { id })).isAgain).toBe(true)
    expect(refusalOf(await correct(wrong, { id, value: '1' }))).toBe('reading-clash')
    expect(await rows()).toHaveLength(2)
  })

  it('is refused for a reading that was corrected already, and says by whom', async () => {
    const wrong = await logged()
    valueOf(await correct(wrong))
    const second = await correct(wrong, {}, bakery.head.caller)
    expect(refusalOf(second)).toBe('stale')
    expect(second).toMatchObject({ refusal: { facts: { who: 'Esi' } } })
    const next = await logged({ piece: 2 })
    const both = await Promise.all([correct(next, { piece: 2 }), correct(next, { piece: 2 }, bakery.head.caller)])
    expect(both.filter(({ ok }) => ok)).toHaveLength(1)
  })

  it('is for a shift baker only their own, in the same shift', async () => {
    const wrong = await logged()
    const late = (person: 'early' | 'late', minutes: number) => callerOf(bakery[person].sessionSecret, after(minutes))
    expect(refusalOf(await correct(wrong, {}, late('late', 0)))).toBe('correction-not-yours')
    // Signed in all the while: a session idles out after half an hour.
    await db().session.updateMany({
      where: { bakeryId: bakery.bakeryId },
      data: { lastSeenAt: after(11 * 60), endsAt: after(48 * 60) },
    })
    const early = late('early', 11 * 60 + 5)
    valueOf(await correct(wrong, {}, early))
    const taken = after(-2 * 60)
    const before = await logged({ piece: 3, takenAt: taken.toISOString() })
    expect(refusalOf(await correct(before, { piece: 3 }, early))).toBe('correction-not-yours')
    valueOf(await correct(before, { piece: 3 }, callerOf(bakery.head.sessionSecret, after(11 * 60 + 5))))
  })

  it('is for head baker and owner any', async () => {
    valueOf(await correct(await logged(), {}, bakery.head.caller))
    valueOf(await correct(await logged({ piece: 2 }), { piece: 2 }, bakery.owner.caller))
  })

  it('may say that it was another piece, and not one that is read already', async () => {
    const wrong = await logged()
    const other = await logged({ piece: 2 })
    expect(refusalOf(await correct(wrong, { piece: 2 }))).toBe('reading-there')
    expect(refusalOf(await correct(wrong, { piece: 9 }))).toBe('invalid piece:too-big')
    valueOf(await correct(wrong, { piece: 3 }))
    // The place it left is free again.
    valueOf(await log({ value: '400' }))
    expect(await db().reading.count({ where: { bakeryId: bakery.bakeryId, supersedesId: other } })).toBe(0)
  })

  it('needs a reason and a reading of this bakery', async () => {
    const wrong = await logged()
    expect(refusalOf(await correct(wrong, { reason: ' ' }))).toBe('invalid reason:missing')
    expect(refusalOf(await correct(wrong, {}, neighbour.owner.caller))).toBe('not-found')
    expect(refusalOf(await correct(uuid()))).toBe('not-found')
  })

  it('is refused once the trial is over', async () => {
    const wrong = await logged()
    await db().trial.update({
      where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: trial.trialId } },
      data: { state: 'closed' },
    })
    expect(refusalOf(await correct(wrong, {}, bakery.owner.caller))).toBe('trial-closed')
  })
})

it('a reading can be neither changed nor taken out, not by the app and not by the owner of the tables', async () => {
  const { readingId } = valueOf(await log())
  for (const url of [database.appUrl, database.ownerUrl]) {
    await connected(url, async (client) => {
      await expect(client.query('UPDATE reading SET value = 1 WHERE id = $1', [readingId])).rejects.toThrow()
      await expect(client.query('DELETE FROM reading WHERE id = $1', [readingId])).rejects.toThrow()
      await expect(client.query('TRUNCATE reading')).rejects.toThrow()
    })
  }
  expect(await rows()).toMatchObject([{ value: 412.5 }])
})
