import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { openSession } from '@/lib/auth/sessions'
import { db } from '@/lib/db/client'
import { inTransaction } from '@/lib/db/transaction'
import { readCheck } from '@/lib/documents/check/read-check'
import { hashOfText } from '@/lib/documents/hash-of-text'
import { checkContentText } from '@/lib/kitchen/checks/check-content.input'
import { keepCheck } from '@/lib/kitchen/checks/keep-check'
import { listChecks } from '@/lib/kitchen/checks/list-checks'
import { logCheckInput } from '@/lib/kitchen/checks/log-check.input'
import { getResult } from '@/lib/kitchen/amendments/get-result'
import { takeEntries } from '@/lib/kitchen/intake/take-entries'
import { beginBatch } from '@/lib/kitchen/shifts/begin-batch'
import { getBatch } from '@/lib/kitchen/shifts/get-batch'
import { addEquipment } from '@/lib/kitchen/stores/add-equipment'
import { addMeasure } from '@/lib/kitchen/stores/add-measure'
import { changeEquipment } from '@/lib/kitchen/stores/change-equipment'
import { makeApprovedTrial, type ApprovedTrial } from '../../support/approved-trial'
import { callerOf, makeBakery, refusalOf, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { connected, freshDatabase, type FreshDatabase } from '../../support/database'

let database: FreshDatabase
let bakery: TestBakery
let neighbour: TestBakery
let bench: string
let dose: string
let probe: string
let seed: string
const at = (minutes: number) => new Date(testNow.getTime() + minutes * 60_000)
const scale = { kind: 'scale', note: '', mostG: 5000, resolutionG: 1 }
const gauge = { kind: 'volume_gauge', note: '', volumeMl: 3000 }

beforeAll(async () => {
  database = await freshDatabase()
  neighbour = await makeBakery('Next Door')
})
afterAll(() => database.drop())
beforeEach(async () => {
  bakery = await makeBakery(`Mill Row ${uuid()}`)
  bench = await added({ ...scale, name: 'Bench scale', testMassG: 1000 })
  dose = await added({ ...scale, name: 'Dose scale', mostG: 200, resolutionG: 0.1, offMostG: 0.2 })
  probe = await added({ kind: 'thermometer', name: 'Probe', note: '', resolutionC: 0.1 })
  seed = await added({ ...gauge, name: 'Seed gauge' })
})

async function added(facts: object): Promise<string> {
  // In the book since before anything is read.
  return valueOf(await addEquipment.call(bakery.head.caller, facts)).equipmentId
}

const entry = (more: object = {}) => ({
  kind: 'check',
  id: uuid(),
  equipmentId: bench,
  shown: '1000',
  unit: 'g',
  takenAt: testNow.toISOString(),
  ...more,
})
const ofSeed = (more: object) => ({ equipmentId: seed, unit: 'mL', ...more })
const callerAt = async ({ personId }: { personId: string }, now: Date) =>
  callerOf(await inTransaction((tx) => openSession(tx, { bakeryId: bakery.bakeryId, personId }, 'test', now)), now)
const sendAt = async (now: Date, entries: object[]) =>
  valueOf(await takeEntries.call(await callerAt(bakery.early, now), { entries })).entries
const send = async (entries: object[], who = bakery.early) =>
  valueOf(await takeEntries.call(who.caller, { entries })).entries
const kept = (id: string) => db().equipmentCheck.findFirst({ where: { bakeryId: bakery.bakeryId, id } })
const refused = (path: string, code: string) => ({ outcome: 'refused', refusal: { problems: [{ path, code }] } })
const dayAt = async (now: Date) => valueOf(await listChecks.call(await callerAt(bakery.early, now), {})).instruments

describe('a check from outside', () => {
  it('is kept once however often it is sent, and answered by the hash of its one text', async () => {
    const one = entry({ mass: '500', shown: '499,5', clockAheadS: 0 })
    const { kind: _, ...content } = one
    const text = checkContentText(logCheckInput.parse(content))
    const hash = hashOfText(text)
    expect(readCheck(text, hash)).toMatchObject({ outcome: 'read', format: 1 })
    expect(await send([one, one])).toMatchObject([
      { outcome: 'kept', id: one.id, hash, isAgain: false },
      { outcome: 'kept', id: one.id, hash, isAgain: true },
    ])
    expect(await send([one])).toMatchObject([{ outcome: 'kept', isAgain: true, hash }])
    expect(await kept(one.id)).toMatchObject({
      massG: 500,
      shownG: 499.5,
      offMostG: 1,
      isGood: true,
      personId: bakery.early.personId,
    })
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
    expect(await send([{ ...one, shown: '900' }, entry()])).toMatchObject([
      { outcome: 'refused', refusal: { code: 'check-clash' } },
      { outcome: 'kept' },
    ])
    expect(await kept(one.id)).toMatchObject({ shownG: 1000 })
  })

  it.each([
    ['a scale within a step', () => ({ shown: '1001' }), true],
    ['a scale beyond it', () => ({ shown: '1001.1' }), false],
    ['a scale that shows less than nothing', () => ({ shown: '-1' }), false],
    ['a scale in other units', () => ({ shown: '1', unit: 'kg' }), true],
    ['a scale by what the bakery allows it', () => ({ equipmentId: dose, mass: '100', shown: '100.2' }), true],
    ['a scale beyond what the bakery allows it', () => ({ equipmentId: dose, mass: '100', shown: '100.3' }), false],
    ['a volume gauge within 2 % of its block', () => ofSeed({ block: '1000', shown: '1020' }), true],
    ['a volume gauge beyond it', () => ofSeed({ block: '1000', shown: '979' }), false],
    ['a volume gauge in litres', () => ofSeed({ block: '1.5', shown: '1.47', unit: 'L' }), true],
    ['a thermometer within half a degree', () => ({ equipmentId: probe, shown: '0.5', unit: '°C' }), true],
    ['a thermometer that is too cold', () => ({ equipmentId: probe, shown: '-0.6', unit: '°C' }), false],
    ['a thermometer in Fahrenheit', () => ({ equipmentId: probe, shown: '32.9', unit: '°F' }), true],
    ['a thermometer in Fahrenheit, too warm', () => ({ equipmentId: probe, shown: '33', unit: '°F' }), false],
  ])('judges %s', async (_, more, isGood) => {
    const one = entry(more())
    expect(await send([one])).toMatchObject([{ outcome: 'kept' }])
    expect(await kept(one.id)).toMatchObject({ isGood })
  })

  it('of a gauge keeps the block, which goes by what the device knew, otherwise by what the book does', async () => {
    seed = await added({ ...gauge, name: 'Rapeseed gauge', blockMl: 1000, offMostMl: 5 })
    const [typed, known] = [entry(ofSeed({ block: '500', shown: '505' })), entry(ofSeed({ shown: '1005,5' }))]
    const { kind: _, ...content } = typed
    const text = checkContentText(logCheckInput.parse(content))
    expect(readCheck(text, hashOfText(text))).toMatchObject({ outcome: 'read', format: 2, value: { block: '500' } })
    expect(await send([typed, known])).toMatchObject([{ outcome: 'kept', hash: hashOfText(text) }, { outcome: 'kept' }])
    const none = { massG: null, shownG: null, offMostG: null, shownC: null, offMostC: null }
    expect(await kept(typed.id)).toMatchObject({ ...none, blockMl: 500, shownMl: 505, offMostMl: 5, isGood: true })
    expect(await kept(known.id)).toMatchObject({ ...none, blockMl: 1000, shownMl: 1005.5, offMostMl: 5, isGood: false })
    // The same with another block is another check.
    expect(await send([{ ...typed, block: '501' }])).toMatchObject([
      { outcome: 'refused', refusal: { code: 'check-clash' } },
    ])
  })

  it('of a gauge is refused by the database with what belongs to a scale beside it, or with nothing known', async () => {
    const one = entry(ofSeed({ block: '1000', shown: '1000' }))
    await send([one])
    const copy = (columns: string, values: string) =>
      connected(database.ownerUrl, (client) =>
        client.query(
          `INSERT INTO equipment_check (bakery_id, id, equipment_id, ${columns}, is_good, shown_entered, unit_entered, at, person_id, taken_at, received_at, content_hash)
           SELECT bakery_id, $2, equipment_id, ${values}, is_good, shown_entered, unit_entered, at, person_id, taken_at, received_at, content_hash
           FROM equipment_check WHERE id = $1`,
          [one.id, uuid()],
        ),
      )
    await copy('block_ml, shown_ml, off_most_ml', '1000, 1000, 20')
    for (const [columns, values] of [
      ['block_ml, shown_ml, off_most_ml, mass_g', '1000, 1000, 20, 5'],
      ['shown_ml, off_most_ml', '1000, 20'],
      ['block_ml, shown_ml, off_most_ml', '0, 1000, 20'],
      ['block_ml, shown_ml, off_most_ml', '1000, 1000, -1'],
      ['block_ml, shown_c, off_most_c', '1000, 1, 1'],
    ] as const)
      await expect(copy(columns, values), columns).rejects.toMatchObject({ code: '23514' })
    const set = (columns: string, id: string) =>
      connected(database.ownerUrl, (client) => client.query(`UPDATE equipment SET ${columns} WHERE id = $1`, [id]))
    await set('block_ml = 3000', seed)
    for (const [columns, id] of [
      ['block_ml = 3001', seed],
      ['block_ml = 0', seed],
      ['off_most_ml = -1', seed],
      ['block_ml = 5', probe],
      ['off_most_ml = 5', bench],
    ] as const)
      await expect(set(columns, id), columns).rejects.toMatchObject({ code: '23514' })
  })

  it.each([
    ['no number', () => ({ shown: 'a lot' }), 'shown', 'not-a-number'],
    ['a number that may be two', () => ({ shown: '1,000' }), 'shown', 'ambiguous-number'],
    ['a scale in degrees', () => ({ unit: '°C' }), 'unit', 'unit-not-of-measure'],
    ['a thermometer in grams', () => ({ equipmentId: probe, shown: '0' }), 'unit', 'unit-not-of-measure'],
    ['a weight in ice', () => ({ equipmentId: probe, unit: '°C', mass: '1' }), 'mass', 'no-weight-in-ice'],
    ['a scale with a weight that nobody named', () => ({ equipmentId: dose }), 'mass', 'missing'],
    ['a weight of nothing', () => ({ mass: '0', shown: '0' }), 'mass', 'not-above'],
    ['a weight that it does not carry', () => ({ equipmentId: dose, mass: '201' }), 'mass', 'too-big'],
    ['a gauge with a block that nobody named', () => ofSeed({ shown: '1000' }), 'block', 'missing'],
    ['a gauge with a block larger than it', () => ofSeed({ block: '3000.5', shown: '3000' }), 'block', 'too-big'],
    ['a block of nothing', () => ofSeed({ block: '0', shown: '0' }), 'block', 'not-above'],
    ['a block that is no number', () => ofSeed({ block: 'a loaf', shown: '0' }), 'block', 'not-a-number'],
    ['a gauge in grams', () => ofSeed({ block: '1000', shown: '1000', unit: 'g' }), 'unit', 'unit-not-of-measure'],
    ['a weight in a gauge', () => ofSeed({ block: '1', shown: '1', mass: '1' }), 'mass', 'no-weight-in-gauge'],
    ['a block on a scale', () => ({ block: '1000' }), 'block', 'no-block'],
    ['a block in ice', () => ({ equipmentId: probe, unit: '°C', shown: '0', block: '1' }), 'block', 'no-block'],
    ['no time', () => ({ takenAt: 'noon' }), 'takenAt', 'wrong-form'],
    ['a field that nobody knows', () => ({ isGood: true }), 'isGood', 'unknown-field'],
  ])('of %s is refused there, and nothing of it is kept', async (_, more, path, code) => {
    const one = entry(more())
    expect(await send([one])).toMatchObject([refused(path, code)])
    expect(await kept(one.id)).toBeNull()
  })

  it('is of a scale, thermometer or volume gauge of this bakery', async () => {
    const oven = await added({ kind: 'oven', name: 'Deck oven', note: '', decks: 2, placesPerDeck: 6 })
    expect(await send([entry({ equipmentId: uuid() }), entry({ equipmentId: oven })])).toMatchObject([
      { outcome: 'refused', refusal: { code: 'not-found' } },
      refused('equipmentId', 'wrong-choice'),
    ])
    expect(await send([entry()], neighbour.early)).toMatchObject([
      { outcome: 'refused', refusal: { code: 'not-found' } },
    ])
  })

  it('is when the device says, put right by what it knows of its clock, and never after it came in', async () => {
    const ahead = entry({ takenAt: at(60).toISOString(), clockAheadS: -3600 })
    const wrong = entry({ takenAt: at(1440).toISOString() })
    await send([ahead, wrong])
    expect((await kept(ahead.id))?.at).toEqual(testNow)
    expect((await kept(wrong.id))?.at).toEqual(testNow)
  })

  it('stays as it was kept, whoever asks and whatever the bakery allows later', async () => {
    const one = entry({ shown: '1005' })
    await send([one])
    for (const statement of [
      `UPDATE equipment_check SET is_good = true WHERE id = $1`,
      `DELETE FROM equipment_check WHERE id = $1`,
    ])
      await expect(connected(database.ownerUrl, (client) => client.query(statement, [one.id]))).rejects.toMatchObject({
        code: 'EV001',
      })
    const wider = { ...scale, name: 'Bench scale', testMassG: 1000, offMostG: 50 }
    valueOf(
      await changeEquipment.call(bakery.head.caller, { ...wider, equipmentId: bench, seenRevision: 1, inUse: true }),
    )
    expect(await kept(one.id)).toMatchObject({ isGood: false, offMostG: 1 })
  })
})

describe('the checks of a day', () => {
  it('are asked for once, of every scale, thermometer and volume gauge in use, and anew when the bakery’s day turns', async () => {
    const asked = async (now: Date) => (await dayAt(now)).filter(({ last }) => !last?.isToday).map(({ name }) => name)
    expect(await asked(testNow)).toEqual(['Bench scale', 'Dose scale', 'Probe', 'Seed gauge'])
    await send([entry(), entry({ equipmentId: probe, shown: '0', unit: '°C' })])
    expect(await asked(testNow)).toEqual(['Dose scale', 'Seed gauge'])
    expect(await asked(at(24 * 60))).toEqual(['Bench scale', 'Dose scale', 'Probe', 'Seed gauge'])
  })

  it('go by the hour at which the day turns', async () => {
    await db().bakery.update({ where: { bakeryId: bakery.bakeryId }, data: { dayTurnsAtH: 6, timeZone: 'UTC' } })
    const night = new Date('2026-03-10T23:00:00Z')
    const one = entry({ takenAt: night.toISOString() })
    await sendAt(night, [one])
    const isToday = async (now: string) => (await dayAt(new Date(now))).find(({ id }) => id === bench)?.last?.isToday
    expect(await isToday('2026-03-11T05:59:59Z')).toBe(true)
    expect(await isToday('2026-03-11T06:00:00Z')).toBe(false)
  })

  it('are not asked of what is out of use, or belongs to somebody else', async () => {
    valueOf(
      await changeEquipment.call(bakery.head.caller, {
        kind: 'thermometer',
        name: 'Probe',
        note: '',
        resolutionC: 0.1,
        equipmentId: probe,
        seenRevision: 1,
        inUse: false,
      }),
    )
    expect((await dayAt(testNow)).map(({ name }) => name)).toEqual(['Bench scale', 'Dose scale', 'Seed gauge'])
    expect(valueOf(await listChecks.call(neighbour.early.caller, {})).instruments).toEqual([])
  })

  it('are kept at the desk as well, and listed with who made them', async () => {
    const input = { equipmentId: bench, shown: '1003', unit: 'g' }
    expect(valueOf(await keepCheck.call(bakery.late.caller, input))).toMatchObject({ isGood: false })
    const { checks, instruments } = valueOf(await listChecks.call(bakery.early.caller, {}))
    expect(checks.rows).toMatchObject([{ instrument: 'Bench scale', massG: 1000, shownG: 1003, isGood: false }])
    expect(instruments[0]).toMatchObject({ name: 'Bench scale', last: { isGood: false, isToday: true } })
    expect(refusalOf(await keepCheck.call(bakery.late.caller, { ...input, shown: 'x' }))).toBe(
      'invalid shown:not-a-number',
    )
    const last = await db().auditEntry.findFirstOrThrow({
      where: { bakeryId: bakery.bakeryId },
      orderBy: { number: 'desc' },
    })
    expect(JSON.parse(last.entryText)).toMatchObject({ action: 'checks.keep-check', target: bench })
  })
})

describe('the list of checks', () => {
  it('is walked to its end with each check once, the latest first, also where many are of one moment', async () => {
    const sent = Array.from({ length: 70 }, (_, index) => entry({ takenAt: at(index < 60 ? 0 : -index).toISOString() }))
    await send(sent)
    const seen: { id: string; at: Date }[] = []
    let after: string | undefined
    do {
      const { checks } = valueOf(await listChecks.call(bakery.late.caller, after === undefined ? {} : { after }))
      expect(checks.count).toBe(70)
      seen.push(...checks.rows)
      after = checks.after ?? undefined
    } while (after !== undefined)
    expect(seen.map(({ id }) => id).sort()).toEqual(sent.map(({ id }) => id).sort())
    expect(seen.every((each, index) => index === 0 || each.at <= seen[index - 1]!.at)).toBe(true)
  })
})

describe('what was read around a failed check', () => {
  let batchId: string
  let trial: ApprovedTrial
  let measures: Record<string, string>
  beforeEach(async () => {
    trial = await makeApprovedTrial(bakery)
    ;({ measures } = trial)
    batchId = trial.batches[0]!.batchId
    valueOf(await beginBatch.call(bakery.early.caller, { batchId, seenRevision: 1, cleanDownDone: false }))
  })
  const reading = (code: string, minute: number, more: object = {}) => ({
    kind: 'reading',
    id: uuid(),
    batchId,
    measureId: measures[code],
    repeat: 1,
    value: '26',
    unit: '°C',
    takenAt: at(minute).toISOString(),
    confirmed: true,
    ...more,
  })
  const ofProbe = (minute: number, shown: string) =>
    entry({ equipmentId: probe, shown, unit: '°C', takenAt: at(minute).toISOString() })
  const ofScale = (equipmentId: string, minute: number, shown: string) =>
    entry({ equipmentId, mass: '100', shown, takenAt: at(minute).toISOString() })
  const ofGauge = (equipmentId: string, minute: number, shown: string) =>
    entry({ equipmentId, block: '1000', shown, unit: 'mL', takenAt: at(minute).toISOString() })
  const marksOf = async () =>
    valueOf(await getBatch.call(bakery.late.caller, { batchId })).marks.map(
      ({ instrument, outcome, isOnlyOne, weighed, readings }) => ({
        name: instrument.name,
        outcome,
        isOnlyOne,
        weighed,
        readings: readings.map(({ code, count }) => [code, count]),
      }),
    )

  it('is said at its dough, the same in whatever order a tablet without a network brings it', async () => {
    const entries = [
      ofProbe(1, '0'),
      reading('dough-temp', 2),
      ofProbe(3, '2'),
      ofScale(bench, 1, '100'),
      ofScale(dose, 1, '100'),
      reading('dough-mass', 4, { piece: 1, value: '912', unit: 'g' }),
      reading('dough-mass', 6, { piece: 2, value: '150', unit: 'g' }),
      ofScale(bench, 5, '98'),
      ofScale(dose, 9, '100'),
    ]
    const expected = [
      { name: 'Probe', outcome: 'before-failed', isOnlyOne: true, weighed: false, readings: [['dough-temp', 1]] },
      { name: 'Bench scale', outcome: 'before-failed', isOnlyOne: true, weighed: false, readings: [['dough-mass', 1]] },
      { name: 'Bench scale', outcome: 'after-failed', isOnlyOne: false, weighed: false, readings: [['dough-mass', 1]] },
    ]
    for (const [sentAt, one] of [8, 4, 3, 7, 0, 1, 6, 2, 5].map((index) => [12, entries[index]!] as const))
      expect(await sendAt(at(sentAt), [one])).toMatchObject([{ outcome: 'kept' }])
    expect(await marksOf()).toEqual(expected)
  })

  it('is said with the result of its trial, by the codes of its doughs, and with one of nothing else', async () => {
    const [one, two] = trial.batches
    valueOf(await beginBatch.call(bakery.early.caller, { batchId: two!.batchId, seenRevision: 1, cleanDownDone: true }))
    const marks = async () =>
      valueOf(await getResult.call(bakery.head.caller, { trialId: trial.trialId })).marks.map(
        ({ instrument, outcome, doughs }) => ({ name: instrument.name, outcome, doughs }),
      )
    await sendAt(at(12), [
      ofProbe(1, '0'),
      reading('dough-temp', 2),
      reading('dough-temp', 3, { batchId: two!.batchId }),
      reading('dough-temp', 8, { batchId: two!.batchId, repeat: 2 }),
    ])
    expect(await marks()).toEqual([])
    await sendAt(at(12), [ofProbe(4, '2'), ofProbe(7, '0')])
    const doughTemp = expect.objectContaining({ code: 'dough-temp', count: 1 }) as unknown
    expect(await marks()).toEqual([
      {
        name: 'Probe',
        outcome: 'before-failed',
        doughs: [{ codes: [one!.code, two!.code], weighed: false, readings: [doughTemp] }],
      },
    ])
  })

  it('is what stands: a reading that was corrected is not counted twice, and what is good is not named', async () => {
    const one = reading('dough-temp', 2)
    await sendAt(at(12), [ofProbe(1, '0'), one, ofProbe(3, '0.1')])
    expect(await marksOf()).toEqual([])
    const fix = {
      kind: 'correction',
      id: uuid(),
      supersedesId: one.id,
      repeat: 1,
      value: '27',
      unit: '°C',
      reason: 'Slip',
      confirmed: true,
    }
    // It was read when the first one was, whenever it is put right.
    expect(await sendAt(at(14), [fix, ofProbe(13, '3')])).toMatchObject([{ outcome: 'kept' }, { outcome: 'kept' }])
    expect(await marksOf()).toEqual([])
    expect(await sendAt(at(14), [ofProbe(2.5, '3')])).toMatchObject([{ outcome: 'kept' }])
    expect(await marksOf()).toMatchObject([{ name: 'Probe', outcome: 'before-failed', readings: [['dough-temp', 1]] }])
  })

  it('is not what was read before the instrument was in the book, nor what is no mass and no temperature', async () => {
    await sendAt(at(12), [
      reading('dough-temp', -5),
      reading('loaf-volume', 4, { piece: 1, value: '2400', unit: 'mL' }),
      reading('proof-time', 5, { value: '55', unit: 'min' }),
      ofProbe(6, '2'),
      ofScale(bench, 6, '90'),
    ])
    expect(await marksOf()).toEqual([])
  })

  it('is a volume by displacement, where a gauge failed that holds as much, and no other volume', async () => {
    const small = await added({ ...gauge, name: 'Roll gauge', volumeMl: 1200 })
    const { measureId } = valueOf(
      await addMeasure.call(bakery.head.caller, {
        name: 'Volume by scanner',
        unit: 'mL',
        digits: 0,
        level: 'batch',
        direction: 'none',
        plausibleLeast: 1,
        plausibleMost: 9000,
        repeats: 1,
        repeatLimit: null,
        ageLeastH: null,
        ageMostH: null,
        method: 'laser scanner',
      }),
    )
    const volume = (piece: number, minute: number, value: string) =>
      reading('loaf-volume', minute, { piece, value, unit: 'mL' })
    const sent = [
      ofGauge(seed, 1, '1000'),
      volume(1, 2, '2400'),
      volume(2, 3, '900'),
      reading('loaf-volume', 4, { measureId, value: '2400', unit: 'mL' }),
      ofGauge(small, 5, '1021'),
      ofGauge(seed, 6, '900'),
      volume(3, 7, '2400'),
      ofGauge(seed, 8, '1000'),
      volume(4, 9, '2400'),
    ]
    expect((await sendAt(at(12), sent)).filter(({ outcome }) => outcome !== 'kept')).toEqual([])
    const mark = { weighed: false, readings: [['loaf-volume', 1]] }
    expect(await marksOf()).toEqual([
      { ...mark, name: 'Roll gauge', outcome: 'before-failed', isOnlyOne: false },
      { ...mark, name: 'Seed gauge', outcome: 'before-failed', isOnlyOne: true },
      { ...mark, name: 'Seed gauge', outcome: 'before-failed', isOnlyOne: false },
      { ...mark, name: 'Seed gauge', outcome: 'after-failed', isOnlyOne: true },
    ])
  })

  it('is what was weighed in, by whichever scale', async () => {
    const { stageId, ingredientId } = await db().armLine.findFirstOrThrow({
      where: { bakeryId: bakery.bakeryId },
      select: { stageId: true, ingredientId: true },
    })
    const weighing = {
      kind: 'weighing',
      id: uuid(),
      batchId,
      stageId,
      ingredientId,
      part: 'line',
      how: 'ticked',
      takenAt: at(2).toISOString(),
    }
    expect(await sendAt(at(12), [weighing, ofScale(dose, 3, '90')])).toMatchObject([
      { outcome: 'kept' },
      { outcome: 'kept' },
    ])
    expect(await marksOf()).toEqual([
      { name: 'Dose scale', outcome: 'before-failed', isOnlyOne: false, weighed: true, readings: [] },
    ])
  })
})
