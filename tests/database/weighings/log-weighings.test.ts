import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { hashOfText } from '@/lib/documents/hash-of-text'
import { readPlan } from '@/lib/documents/plan/read-plan'
import { readWeighing } from '@/lib/documents/weighing/read-weighing'
import { takeEntries } from '@/lib/kitchen/intake/take-entries'
import { listKeptAside } from '@/lib/kitchen/readings/list-kept-aside'
import { settleEntry } from '@/lib/kitchen/readings/settle-entry'
import { closeTrial } from '@/lib/kitchen/results/close-trial'
import { getResult } from '@/lib/kitchen/amendments/get-result'
import { getBatch } from '@/lib/kitchen/shifts/get-batch'
import { openDoughKey } from '@/lib/kitchen/shifts/open-dough-key'
import { addIngredient } from '@/lib/kitchen/stores/add-ingredient'
import { endLot } from '@/lib/kitchen/stores/end-lot'
import { receiveLot } from '@/lib/kitchen/stores/receive-lot'
import { isSameInAll, linesOfPlan, type TrialLine } from '@/lib/kitchen/weighings/lines-of-plan'
import { logWeighingInput } from '@/lib/kitchen/weighings/log-weighing.input'
import { logWeighings } from '@/lib/kitchen/weighings/log-weighings'
import { weighingContentText } from '@/lib/kitchen/weighings/weighing-content.input'
import { makeApprovedTrial } from '../../support/approved-trial'
import {
  callerOf,
  makeBakery,
  refusalOf,
  testNow,
  valueOf,
  type TestBakery,
  type TestPerson,
} from '../../support/bakery'
import { connected, freshDatabase, type FreshDatabase } from '../../support/database'
import { makeEndedTrial, type EndedTrial } from '../../support/ended-trial'

let database: FreshDatabase
let bakery: TestBakery
let neighbour: TestBakery
let trial: EndedTrial
let lines: TrialLine[]
let doughs: { id: string; code: string; arm: number }[]

/** Readings are received at `testNow`; what is to count is written before. */
const before = new Date(testNow.getTime() - 10 * 60_000)
const after = new Date(testNow.getTime() + 60_000)

beforeAll(async () => {
  database = await freshDatabase()
  neighbour = await makeBakery('Next Door', before)
})
afterAll(() => database.drop())
beforeEach(async () => {
  bakery = await makeBakery('Mill Row', before)
  trial = await makeEndedTrial(bakery, { state: 'baking' })
  const { planText, planHash } = await db().trial.findUniqueOrThrow({
    where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: trial.trialId } },
  })
  const read = readPlan(planText!, planHash!)
  if (read.outcome !== 'read') throw new Error(read.outcome)
  lines = linesOfPlan(read.plan)
  const batches = await db().batch.findMany({
    where: { bakeryId: bakery.bakeryId, trialId: trial.trialId },
    select: { id: true, code: true, arm: { select: { position: true } } },
    orderBy: [{ mixingDay: { number: 'asc' } }, { plannedOrder: 'asc' }],
  })
  doughs = batches.map(({ arm, ...batch }) => ({ ...batch, arm: arm.position }))
})

const as = ({ sessionSecret, password }: TestPerson, now: Date) => callerOf(sessionSecret, now, password)
const doughOf = (arm: number) => doughs.find((each) => each.arm === arm)!
const malt = () => lines.find(({ isDose, targets }) => isDose && targets[1]!.massG > 0 && targets[0]!.massG === 0)!
const same = () => lines.find(isSameInAll)!
const placeOf = ({ stage, ingredient, part }: TrialLine) => ({ stageId: stage.id, ingredientId: ingredient.id, part })
type Said = { how: 'ticked' | 'weighed' | 'left_out' | null; mass?: string; seenId?: string }
const write = (
  dough: { id: string },
  said: [TrialLine, Said][],
  more: { at?: Date; who?: TestPerson; reason?: string; confirmed?: boolean } = {},
) => {
  const { at = before, who = bakery.early, reason, confirmed = false } = more
  return logWeighings.call(as(who, at), {
    batchId: dough.id,
    lines: said.map(([line, { seenId = null, ...each }]) => ({ ...placeOf(line), seenId, ...each })),
    unit: 'g',
    confirmed,
    ...(reason === undefined ? {} : { reason }),
  })
}
const weighed = (line: TrialLine, massG: number): [TrialLine, Said] => [line, { how: 'weighed', mass: String(massG) }]
const rows = () => db().weighing.findMany({ where: { bakeryId: bakery.bakeryId }, orderBy: { id: 'asc' } })
const pageOf = async (dough: { id: string }, who = bakery.early) =>
  valueOf(await getBatch.call(as(who, before), { batchId: dough.id })).weighed!
const close = async () => {
  const { revision } = await db().trial.findUniqueOrThrow({
    where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: trial.trialId } },
  })
  return closeTrial.call(as(bakery.owner, after), {
    trialId: trial.trialId,
    seenRevision: revision,
    early: false,
    reason: 'all there is',
  })
}
const resultOf = async () => valueOf(await getResult.call(as(bakery.owner, after), { trialId: trial.trialId }))
const lastEntry = async () =>
  JSON.parse(
    (await db().auditEntry.findFirstOrThrow({ where: { bakeryId: bakery.bakeryId }, orderBy: { number: 'desc' } }))
      .entryText,
  ) as Record<string, unknown>

describe('what was weighed', () => {
  it('is kept line by line, as planned or as the scale showed it, and stands in the record without its weight', async () => {
    const dough = doughOf(1)
    expect(valueOf(await write(dough, [[same(), { how: 'ticked' }], weighed(malt(), 5.5)]))).toEqual({ kept: 2 })
    expect(await rows()).toMatchObject([
      { how: 'ticked', massG: null, batchId: dough.id, receivedAt: before },
      { how: 'weighed', massG: 5.5, massEntered: '5.5', unitEntered: 'g', personId: bakery.early.personId },
    ])
    expect(await lastEntry()).toMatchObject({
      action: 'weighings.log-weighings',
      target: dough.id,
      after: {
        weighed: [
          { batch: dough.code, part: 'line' },
          { batch: dough.code, part: malt().part },
        ],
      },
    })
    expect(JSON.stringify(await lastEntry())).not.toMatch(/"5\.5"|ticked|left_out/)
  })

  it('of a line that is not the same in every dough is never ticked, whoever asks', async () => {
    for (const who of [bakery.early, bakery.owner])
      expect(refusalOf(await write(doughOf(1), [[malt(), { how: 'ticked' }]], { who }))).toBe(
        'invalid lines.0.how:differs-so-weigh',
      )
    expect(await rows()).toEqual([])
  })

  it('is all kept or none of it, with every fault at its own field', async () => {
    const said: [TrialLine, Said][] = [
      [same(), { how: 'ticked' }],
      [malt(), { how: 'weighed', mass: '-3' }],
    ]
    expect(refusalOf(await write(doughOf(1), said))).toBe('invalid lines.1.mass:too-small')
    expect(refusalOf(await write(doughOf(1), [[malt(), { how: 'weighed', mass: 'some' }]]))).toBe(
      'invalid lines.0.mass:not-a-number',
    )
    expect(refusalOf(await write(doughOf(1), [[malt(), { how: 'weighed' }]]))).toBe('invalid lines.0.mass:missing')
    expect(refusalOf(await write(doughOf(1), [[malt(), { how: null }]]))).toBe('nothing-weighed')
    expect(await rows()).toEqual([])
  })

  it('in kilograms for grams is asked back, the same for every dough, and kept when confirmed', async () => {
    for (const arm of [0, 1, 2])
      expect(refusalOf(await write(doughOf(arm), [weighed(malt(), 5000)]))).toBe(
        'odd-weighing lines.0.mass:in-which-unit',
      )
    valueOf(await write(doughOf(1), [weighed(malt(), 5000)], { confirmed: true }))
  })

  it('of a line that the plan does not have, or of a neighbour’s dough, is refused', async () => {
    const { stage } = malt()
    const stray = { ...malt(), stage: { ...stage, id: uuid() } }
    expect(refusalOf(await write(doughOf(1), [weighed(stray, 5)]))).toBe('line-not-in-plan')
    expect(refusalOf(await write(doughOf(1), [[malt(), { how: 'left_out' }]], { who: neighbour.owner }))).toBe(
      'not-found',
    )
    expect(await rows()).toEqual([])
  })

  it('is refused before a dough is begun, and after the closing', async () => {
    const waiting = await makeApprovedTrial(bakery, { now: before })
    const planned = await db().trial.findUniqueOrThrow({
      where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: waiting.trialId } },
    })
    const read = readPlan(planned.planText!, planned.planHash!)
    if (read.outcome !== 'read') throw new Error(read.outcome)
    const ofWaiting = linesOfPlan(read.plan).find(isSameInAll)!
    expect(refusalOf(await write({ id: waiting.batches[0]!.batchId }, [[ofWaiting, { how: 'ticked' }]]))).toBe(
      'batch-not-begun',
    )
    valueOf(await close())
    expect(refusalOf(await write(doughOf(1), [weighed(malt(), 5)], { at: after }))).toBe('trial-closed')
    await expect(
      db().weighing.create({
        data: {
          bakeryId: bakery.bakeryId,
          id: uuid(),
          trialId: trial.trialId,
          batchId: doughOf(1).id,
          ...placeOf(same()),
          how: 'ticked',
          personId: bakery.early.personId,
          takenAt: after,
          receivedAt: after,
          contentHash: 'a'.repeat(64),
        },
      }),
    ).rejects.toThrow(/readings are closed/)
  })
})

describe('a weighing that was wrong', () => {
  const first = async () => {
    valueOf(await write(doughOf(1), [weighed(malt(), 1.2)]))
    return (await rows())[0]!.id
  }

  it('gives way for a reason, and stays', async () => {
    const seenId = await first()
    const right: [TrialLine, Said][] = [[malt(), { how: 'weighed', mass: '12', seenId }]]
    expect(refusalOf(await write(doughOf(1), right))).toBe('invalid reason:missing')
    valueOf(await write(doughOf(1), right, { reason: 'a point too many' }))
    expect(await rows()).toMatchObject([
      { massG: 1.2 },
      { massG: 12, supersedesId: seenId, reason: 'a point too many' },
    ])
    expect(await lastEntry()).toMatchObject({ after: { weighed: [{ corrects: seenId }] } })
    expect(JSON.stringify(await lastEntry())).not.toContain('a point too many')
  })

  it('is put right by whoever wrote it, in their shift, or by the head baker', async () => {
    const seenId = await first()
    const right: [TrialLine, Said][] = [[malt(), { how: 'weighed', mass: '12', seenId }]]
    expect(refusalOf(await write(doughOf(1), right, { reason: 'x', who: bakery.late }))).toBe('correction-not-yours')
    valueOf(await write(doughOf(1), right, { reason: 'x', who: bakery.head }))
  })

  it('is not written over by who did not see it', async () => {
    const seenId = await first()
    expect(refusalOf(await write(doughOf(1), [weighed(malt(), 12)], { who: bakery.late }))).toBe('stale')
    valueOf(await write(doughOf(1), [[malt(), { how: 'weighed', mass: '12', seenId }]], { reason: 'slip' }))
    expect(
      refusalOf(await write(doughOf(1), [[malt(), { how: 'weighed', mass: '13', seenId }]], { reason: 'slip' })),
    ).toBe('stale')
  })

  it('of another line cannot be given way to', async () => {
    const seenId = await first()
    expect(refusalOf(await write(doughOf(1), [[same(), { how: 'left_out', seenId }]], { reason: 'slip' }))).toBe(
      'invalid lines.0.supersedesId:wrong-choice',
    )
  })

  it('is written by one of two who tap at the same moment', async () => {
    const both = await Promise.all(
      [bakery.early, bakery.late].map((who) => write(doughOf(1), [[same(), { how: 'ticked' }]], { who })),
    )
    expect(both.filter(({ ok }) => ok)).toHaveLength(1)
    expect(refusalOf(both.find(({ ok }) => !ok)!)).toMatch(/^stale/)
    expect(await rows()).toHaveLength(1)
  })
})

describe('who does not know which dough it is', () => {
  it('is asked the same lines for every dough, and shown no weight, planned or kept', async () => {
    for (const { id, arm } of doughs.slice(0, 6))
      valueOf(await write({ id }, [weighed(malt(), arm === 1 ? 6 : 0.1)], { who: bakery.late, confirmed: true }))
    const pages = await Promise.all(doughs.slice(0, 6).map((dough) => pageOf(dough)))
    const [one] = pages.map((page) =>
      page.map(({ stands, ...line }) => ({ ...line, stands: stands && { ...stands, id: '' } })),
    )
    for (const page of pages)
      expect(page.map(({ stands, ...line }) => ({ ...line, stands: stands && { ...stands, id: '' } }))).toEqual(one)
    expect(one!.every(({ target, stands }) => target === null && (stands === null || stands.as === null))).toBe(true)
  })

  it('gets the same answer whether a line is on target or not', async () => {
    const answers = []
    for (const arm of [0, 1, 2]) answers.push(valueOf(await write(doughOf(arm), [weighed(malt(), 6)])))
    expect(new Set(answers.map((answer) => JSON.stringify(answer))).size).toBe(1)
  })

  it('sees it all once they opened the key', async () => {
    const dough = doughOf(1)
    const targetG = malt().targets[1]!.massG
    valueOf(await write(dough, [weighed(malt(), 2 * targetG)]))
    valueOf(await openDoughKey.call(as(bakery.early, before), { batchId: dough.id }))
    const shown = (await pageOf(dough)).find(({ ingredient }) => ingredient.id === malt().ingredient.id)
    expect(shown).toMatchObject({
      target: { massG: targetG },
      stands: { as: { how: 'weighed', massG: 2 * targetG, found: 'off' } },
    })
  })
})

describe('the result', () => {
  it('says before the closing of how many doughs nothing was written, and no weight by its code', async () => {
    valueOf(await write(doughOf(1), [weighed(malt(), 1)]))
    const { weighings } = await resultOf()
    expect(weighings).toMatchObject({ partly: [doughOf(1).code], off: [], corrections: [] })
    expect(weighings!.unwritten).toHaveLength(doughs.length - 1)
  })

  it('does not count a dough whose dose was off, and shows it beside', async () => {
    const dough = doughOf(1)
    valueOf(await write(dough, [weighed(malt(), 2 * malt().targets[1]!.massG)]))
    valueOf(await close())
    const { batches, weighings, withTakenOut, asLastWeighed, sealed } = await resultOf()
    expect(sealed.outcome).toBe('agrees')
    expect(batches.find(({ id }) => id === dough.id)).toMatchObject({ uncounted: 'out-of-its-arm', state: 'measured' })
    expect(batches.find(({ id }) => id === dough.id)!.values).not.toEqual([])
    expect(weighings!.off).toMatchObject([{ code: dough.code, found: 'off', isLate: false }])
    expect(withTakenOut!.codes).toEqual([dough.code])
    expect(asLastWeighed).toBeNull()
  })

  it('counts one whose dose is said to be off after it was read, and shows what that would do', async () => {
    const dough = doughOf(1)
    valueOf(await write(dough, [weighed(malt(), 2 * malt().targets[1]!.massG)], { at: after }))
    valueOf(await close())
    const { batches, weighings, withTakenOut, asLastWeighed } = await resultOf()
    expect(batches.find(({ id }) => id === dough.id)).toMatchObject({ uncounted: null })
    expect(weighings!.off).toMatchObject([{ code: dough.code, isLate: true }])
    expect([withTakenOut, asLastWeighed!.codes]).toEqual([null, [dough.code]])
  })

  it('concludes nothing where a weighing was changed past every rule', async () => {
    valueOf(await write(doughOf(1), [weighed(malt(), 6)]))
    valueOf(await close())
    await connected(database.superUrl, (client) =>
      client.query(`ALTER TABLE weighing DISABLE TRIGGER USER;
        UPDATE weighing SET mass_g = 7, mass_entered = '7' WHERE bakery_id = '${bakery.bakeryId}';
        ALTER TABLE weighing ENABLE TRIGGER USER`),
    )
    expect((await resultOf()).sealed).toMatchObject({
      outcome: 'differs',
      first: { kind: 'weighing-changed', code: doughOf(1).code, ingredient: malt().ingredient.name },
    })
  })
})

describe('an entry from outside', () => {
  const entry = (dough: { id: string }, more: Record<string, unknown> = {}) => ({
    kind: 'weighing',
    id: uuid(),
    batchId: dough.id,
    ...placeOf(malt()),
    how: 'weighed',
    mass: '6',
    unit: 'g',
    takenAt: before.toISOString(),
    ...more,
  })
  const send = async (entries: unknown[], who = bakery.early, at = before) =>
    valueOf(await takeEntries.call(as(who, at), { entries })).entries

  it('is kept once however often it is sent, and the answer says no more', async () => {
    const one = entry(doughOf(1))
    expect(await send([one, one])).toMatchObject([
      { outcome: 'kept', isAgain: false, about: {} },
      { outcome: 'kept', isAgain: true, about: {} },
    ])
    expect(await send([one])).toMatchObject([{ outcome: 'kept', isAgain: true }])
    expect(await rows()).toHaveLength(1)
  })

  it('is aside where the line is written already, and where its number is another’s', async () => {
    const one = entry(doughOf(1))
    await send([one])
    expect(await send([entry(doughOf(1), { mass: '7' }), { ...one, mass: '8' }])).toMatchObject([
      { outcome: 'aside', refusal: { code: 'aside-place-taken' } },
      { outcome: 'aside', refusal: { code: 'aside-id-taken' } },
    ])
    expect(await rows()).toHaveLength(1)
  })

  it('that is aside says what it is and not how much, and can only be left', async () => {
    const one = entry(doughOf(1))
    await send([one, entry(doughOf(1), { mass: '7' })])
    const { rows: asides } = valueOf(await listKeptAside.call(as(bakery.head, before), {}))
    expect(asides).toMatchObject([{ bar: 'weighing', entered: null, standing: null, batch: { code: doughOf(1).code } }])
    const { entryId, hash } = asides[0]!
    const settle = (take: boolean) =>
      settleEntry.call(as(bakery.head, before), { entryId, hash, take, seenReadingId: null, reason: 'sent twice' })
    expect(refusalOf(await settle(true))).toBe('weighing-only-left')
    valueOf(await settle(false))
    expect(await lastEntry()).toMatchObject({ before: { unread: 'weighing' }, after: 'left aside' })
    expect((await rows()).map(({ massG }) => massG)).toEqual([6])
  })

  it('corrects one of the same request, and is refused by itself where it is at fault', async () => {
    const one = entry(doughOf(1))
    const right = entry(doughOf(1), { mass: '6.1', supersedesId: one.id, reason: 'the scale had not settled' })
    expect(
      await send([one, right, entry(doughOf(2), { mass: '-1' }), entry(doughOf(2), { how: 'ticked' })]),
    ).toMatchObject([
      { outcome: 'kept' },
      { outcome: 'kept' },
      { outcome: 'refused', refusal: { problems: [{ path: 'mass', code: 'too-small' }] } },
      { outcome: 'refused', refusal: { problems: [{ path: 'how', code: 'differs-so-weigh' }] } },
    ])
    expect((await rows()).map(({ massG }) => massG)).toEqual([6, 6.1])
  })

  it('that comes after the closing is kept aside, and moves nothing', async () => {
    valueOf(await close())
    expect(await send([entry(doughOf(1))], bakery.early, after)).toMatchObject([
      { outcome: 'aside', refusal: { code: 'aside-trial-closed' } },
    ])
    expect(await rows()).toEqual([])
    expect((await resultOf()).sealed.outcome).toBe('agrees')
  })
})

describe('a weighing that names lots', () => {
  const receive = async (ingredientId: string, more: object = {}, to = bakery) =>
    valueOf(
      await receiveLot.call(as(to.head, before), {
        ingredientId,
        code: `B ${++serial}`,
        receivedOn: '2026-03-02',
        bestBefore: null,
        strength: null,
        note: '',
        ...more,
      }),
    ).lotId
  let serial = 0
  const saying = (line: TrialLine, mass: string | undefined, lots: object[], more: object = {}) =>
    logWeighings.call(as(bakery.early, before), {
      batchId: doughOf(1).id,
      lines: [
        {
          ...placeOf(line),
          seenId: null,
          how: 'weighed',
          ...(mass === undefined ? {} : { mass }),
          ...(lots.length === 0 ? {} : { lots }),
          ...more,
        },
      ],
      unit: 'g',
      confirmed: false,
    })
  const kept = () => db().weighingLot.findMany({ where: { bakeryId: bakery.bakeryId }, orderBy: { position: 'asc' } })

  it('is kept with what each gave, and the record says neither a lot nor a weight', async () => {
    const [one, other] = [await receive(malt().ingredient.id), await receive(malt().ingredient.id)]
    valueOf(
      await saying(malt(), '5.5', [
        { lotId: one, mass: '5.25' },
        { lotId: other, mass: '0.25' },
      ]),
    )
    expect(await kept()).toMatchObject([
      { lotId: one, massG: 5.25, massEntered: '5.25', ingredientId: malt().ingredient.id },
      { lotId: other, massG: 0.25 },
    ])
    expect(JSON.stringify(await lastEntry())).not.toMatch(new RegExp(`5.25|${one}|B \\d`))
  })

  it('of one lot needs no second weight, also where it is ticked', async () => {
    const flour = await receive(same().ingredient.id)
    valueOf(await saying(same(), undefined, [{ lotId: flour }], { how: 'ticked' }))
    expect(await kept()).toMatchObject([{ lotId: flour, massG: null, massEntered: null }])
  })

  it('of several lots is never ticked: each has its own weight', async () => {
    const lots = [{ lotId: await receive(same().ingredient.id) }, { lotId: await receive(same().ingredient.id) }]
    expect(refusalOf(await saying(same(), undefined, lots, { how: 'ticked' }))).toBe(
      'invalid lines.0.lots.1.lotId:lots-want-weights',
    )
    expect(refusalOf(await saying(same(), undefined, [{ ...lots[0], mass: '5' }], { how: 'ticked' }))).toBe(
      'invalid lines.0.lots.0.mass:mass-only-where-weighed',
    )
  })

  it('makes exactly what the scale showed, in whatever unit and with whatever mark', async () => {
    const [one, other] = [await receive(malt().ingredient.id), await receive(malt().ingredient.id)]
    const two = (a: string, b: string) => [
      { lotId: one, mass: a },
      { lotId: other, mass: b },
    ]
    expect(refusalOf(await saying(malt(), '3.4', two('1.1', '2.2')))).toBe(
      'invalid lines.0.lots.1.mass:lots-not-the-sum',
    )
    // Doubles make 3.3000000000000003 of these.
    valueOf(await saying(malt(), '3,3', two('1.1', '2,2')))
  })

  it.each([
    ['nothing of it went in', { how: 'left_out' }, undefined, [{ at: 0 }], 'lots.0.lotId:lot-where-left-out'],
    [
      'one is named twice',
      {},
      '5',
      [
        { at: 0, mass: '2' },
        { at: 0, mass: '3' },
      ],
      'lots.1.lotId:there-twice',
    ],
    ['one of two has no weight', {}, '5', [{ at: 0, mass: '5' }, { at: 1 }], 'lots.1.mass:missing'],
    [
      'one gave nothing',
      {},
      '5',
      [
        { at: 0, mass: '5' },
        { at: 1, mass: '0' },
      ],
      'lots.1.mass:not-above',
    ],
    [
      'one gave less than nothing',
      {},
      '5',
      [
        { at: 0, mass: '6' },
        { at: 1, mass: '-1' },
      ],
      'lots.1.mass:too-small',
    ],
    ['a weight is a word', {}, '5', [{ at: 0, mass: 'all' }], 'lots.0.mass:not-a-number'],
    ['one alone gave less than was weighed', {}, '5', [{ at: 0, mass: '4' }], 'lots.0.mass:lots-not-the-sum'],
    ['the whole was not weighed', {}, undefined, [{ at: 0, mass: '5' }], 'mass:missing'],
  ] as const)('is refused where %s, and nothing of it is kept', async (_, more, mass, lots, fault) => {
    const ids = [await receive(malt().ingredient.id), await receive(malt().ingredient.id)]
    const named = lots.map(({ at, ...lot }) => ({ lotId: ids[at], ...lot }))
    expect(refusalOf(await saying(malt(), mass, named, more))).toBe(`invalid lines.0.${fault}`)
    expect([await rows(), await kept()]).toEqual([[], []])
  })

  it('of another ingredient, another bakery, or of nowhere is refused', async () => {
    const stray = await receive(same().ingredient.id, { code: 'F 1' })
    const answer = await saying(malt(), '5', [{ lotId: stray }])
    expect(refusalOf(answer)).toBe('invalid lines.0.lots.0.lotId:lot-of-other-ingredient')
    expect(answer.ok ? [] : answer.refusal.problems[0]!.facts).toMatchObject({ code: 'F 1' })
    const { ingredientId } = valueOf(
      await addIngredient.call(as(neighbour.head, before), {
        name: `Malt ${uuid()}`,
        labelName: 'Malt',
        kind: 'malt',
        active: null,
        customary: null,
        allergens: ['gluten'],
        allergenCheck: 'checked-now',
        dustCaution: true,
        note: '',
        figures: {},
      }),
    )
    const theirs = await receive(ingredientId, {}, neighbour)
    for (const lotId of [theirs, uuid()])
      expect(refusalOf(await saying(malt(), '5', [{ lotId }]))).toBe('invalid lines.0.lots.0.lotId:lot-not-there')
    // And past the app the keys do not fit.
    valueOf(await saying(malt(), '5', []))
    const [weighing] = await rows()
    await expect(
      db().weighingLot.create({
        data: {
          bakeryId: bakery.bakeryId,
          weighingId: weighing!.id,
          lotId: stray,
          ingredientId: malt().ingredient.id,
          position: 0,
        },
      }),
    ).rejects.toThrow()
  })

  it('is refused while nothing is said of the allergens, and taken once something is', async () => {
    const lotId = await receive(malt().ingredient.id)
    const ofMalt = { bakeryId: bakery.bakeryId, id: malt().ingredient.id }
    await db().ingredient.updateMany({ where: ofMalt, data: { allergens: [], allergensCheckedAt: null } })
    expect(refusalOf(await saying(malt(), '5', [{ lotId }]))).toBe('invalid lines.0.lots.0.lotId:lot-allergens-unknown')
    expect((await pageOf(doughOf(1))).find(({ ingredient }) => ingredient.id === ofMalt.id)!.lots).toEqual([])
    await db().ingredient.updateMany({ where: ofMalt, data: { allergensCheckedAt: before } })
    valueOf(await saying(malt(), '5', [{ lotId }]))
  })

  it('past its best-before day is taken and flagged, for who knows the dough', async () => {
    const lotId = await receive(malt().ingredient.id, { receivedOn: '2026-02-01', bestBefore: '2026-03-01' })
    const ofMalt = async () =>
      (await pageOf(doughOf(1))).find(({ ingredient }) => ingredient.id === malt().ingredient.id)!
    expect((await ofMalt()).lots).toMatchObject([{ id: lotId, isPast: true }])
    valueOf(await saying(malt(), '5', [{ lotId }]))
    expect((await ofMalt()).stands!.as).toBeNull()
    valueOf(await openDoughKey.call(as(bakery.early, before), { batchId: doughOf(1).id }))
    expect((await ofMalt()).stands!.as!.lots).toMatchObject([{ massG: null, isPast: true }])
  })

  it('from outside is answered by the hash of its text with the lots, and is kept once', async () => {
    const lotId = await receive(malt().ingredient.id)
    const one = {
      kind: 'weighing',
      id: uuid(),
      batchId: doughOf(1).id,
      ...placeOf(malt()),
      how: 'weighed',
      mass: '6',
      unit: 'g',
      takenAt: before.toISOString(),
      lots: [{ lotId }],
    }
    const send = async (entries: object[]) =>
      valueOf(await takeEntries.call(as(bakery.early, before), { entries })).entries
    const { kind: _, ...content } = one
    const text = weighingContentText(logWeighingInput.parse(content))
    expect(readWeighing(text, hashOfText(text))).toMatchObject({
      format: 2,
      value: { lots: [{ lot: lotId, mass: null }] },
    })
    expect(await send([one, one])).toMatchObject([
      { outcome: 'kept', isAgain: false, hash: hashOfText(text) },
      { outcome: 'kept', isAgain: true },
    ])
    // Under the same number without its lots it is another weighing.
    const { lots: __, ...without } = one
    expect(await send([one, without])).toMatchObject([
      { outcome: 'kept', isAgain: true },
      { outcome: 'aside', refusal: { code: 'aside-id-taken' } },
    ])
    expect(await kept()).toHaveLength(1)
    // A refused one keeps none of the others from the book.
    const good = { ...one, id: uuid(), batchId: doughOf(2).id }
    expect(await send([{ ...good, id: uuid(), lots: [{ lotId: uuid() }] }, good])).toMatchObject([
      { outcome: 'refused', refusal: { problems: [{ path: 'lots.0.lotId', code: 'lot-not-there' }] } },
      { outcome: 'kept' },
    ])
  })

  it('keeps its lots for good, and none is added after the closing', async () => {
    const [one, other] = [await receive(malt().ingredient.id), await receive(malt().ingredient.id)]
    valueOf(await saying(malt(), '5', [{ lotId: one }]))
    const [weighing] = await rows()
    await expect(
      db().weighingLot.updateMany({ where: { bakeryId: bakery.bakeryId }, data: { lotId: other } }),
    ).rejects.toThrow()
    valueOf(await close())
    expect((await resultOf()).sealed.outcome).toBe('agrees')
    await expect(
      db().weighingLot.create({
        data: {
          bakeryId: bakery.bakeryId,
          weighingId: weighing!.id,
          lotId: other,
          ingredientId: malt().ingredient.id,
          position: 1,
        },
      }),
    ).rejects.toThrow(/readings are closed/)
  })

  it('is offered the lots in use, the same for every dough', async () => {
    const lotId = await receive(malt().ingredient.id)
    const ended = await receive(malt().ingredient.id)
    valueOf(await endLot.call(as(bakery.head, before), { lotId: ended, why: 'used_up' }))
    const offered = await Promise.all(
      doughs.map(async (dough) => (await pageOf(dough)).map(({ lots }) => lots.map(({ id }) => id))),
    )
    for (const each of offered) expect(each).toEqual(offered[0])
    expect(offered[0]!.flat()).toEqual([lotId])
    // What went in went in: one that was ended meanwhile is no fault of whoever weighs.
    valueOf(await saying(malt(), '5', [{ lotId: ended }]))
  })
})
