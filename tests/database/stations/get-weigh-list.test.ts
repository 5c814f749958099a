import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { toleranceOfLine } from '@/lib/kitchen/conduct/tolerance-of-line.input'
import { takeEntries } from '@/lib/kitchen/intake/take-entries'
import { beginBatch } from '@/lib/kitchen/shifts/begin-batch'
import { getBatch } from '@/lib/kitchen/shifts/get-batch'
import { openDoughKey } from '@/lib/kitchen/shifts/open-dough-key'
import { getWeighList } from '@/lib/kitchen/stations/get-weigh-list'
import { goOn } from '@/lib/kitchen/stations/go-on'
import { decidePlan } from '@/lib/kitchen/trials/decide-plan'
import { draftTrial } from '@/lib/kitchen/trials/draft-trial'
import { proposePlan } from '@/lib/kitchen/trials/propose-plan'
import { makeBakery, refusalOf, testNow, valueOf, type TestBakery } from '@/tests/support/bakery'
import { freshDatabase, type FreshDatabase } from '@/tests/support/database'
import { atStation, enrolledStation, givePin, tokenAt, type TestStation } from '@/tests/support/stations'
import { makeTrialStores, trialContentOf, type TrialStores } from '@/tests/support/trials'

let database: FreshDatabase
let bakery: TestBakery
let station: TestStation
let stores: TrialStores
const tokens = { early: '', late: '', head: '' }
/** By kind of dough: the control, one with more salt, one with malt that no scale here weighs closely. */
let doughs: string[]

beforeAll(async () => {
  database = await freshDatabase()
  bakery = await makeBakery('Mill Row')
  station = await enrolledStation(bakery)
  for (const who of ['early', 'late', 'head'] as const) {
    await givePin(bakery[who])
    tokens[who] = await tokenAt(station, bakery[who])
  }
  stores = await makeTrialStores(bakery)
  await db().equipment.create({
    data: {
      bakeryId: bakery.bakeryId,
      id: uuid(),
      kind: 'scale',
      name: 'Dose scale',
      leastG: 0.5,
      mostG: 600,
      resolutionG: 0.1,
      repeatabilityG: 0.1,
      note: '',
      revision: 1,
      createdAt: testNow,
    },
  })
  const content = trialContentOf(stores)
  const [malt] = content.arms
  const dose = malt!.doses[0]!
  const { trialId } = valueOf(
    await draftTrial.call(bakery.late.caller, {
      content: {
        ...content,
        mixingDays: 2,
        arms: [
          { ...malt!, name: 'salt, 0.3 % more', doses: [{ ...dose, ingredientId: stores.ids.salt, value: 0.3 }] },
          { ...malt!, name: 'malt, 0.02 %', doses: [{ ...dose, value: 0.02 }] },
        ],
      },
    }),
  )
  const { planHash, revision } = valueOf(await proposePlan.call(bakery.late.caller, { trialId, seenRevision: 1 }))
  valueOf(
    await decidePlan.call(bakery.owner.caller, {
      trialId,
      seenRevision: revision,
      planHash,
      verdict: 'approved',
      note: '',
    }),
  )
  const batches = await db().batch.findMany({
    where: { bakeryId: bakery.bakeryId, trialId },
    select: { id: true, arm: { select: { position: true } } },
    orderBy: [{ mixingDay: { number: 'asc' } }, { plannedOrder: 'asc' }],
  })
  for (const { id } of batches.slice(0, 3))
    valueOf(await beginBatch.call(bakery.early.caller, { batchId: id, seenRevision: 1, cleanDownDone: true }))
  doughs = [0, 1, 2].map((position) => batches.find(({ arm }) => arm.position === position)!.id)
})
afterAll(() => database.drop())

const as = (token: string, now = testNow) => atStation(station, token, now)
const ask = (batchId: string, token = tokens.early) => getWeighList.call(as(token), { batchId })
const opened = async (batchId: string, token = tokens.early) => {
  valueOf(await openDoughKey.call(as(token), { batchId }))
  return valueOf(await ask(batchId, token))
}

describe('what a dough weighs, on a tablet', () => {
  it('is for whoever opened its key, which the record keeps with the tablet, and for nobody else', async () => {
    expect(refusalOf(await ask(doughs[1]!))).toBe('dough-key-closed')
    const list = await opened(doughs[1]!)
    expect(list.lines.length).toBeGreaterThan(5)
    expect(refusalOf(await ask(doughs[1]!, tokens.late))).toBe('dough-key-closed')
    expect(refusalOf(await ask(doughs[2]!))).toBe('dough-key-closed')
    const entry = await db().auditEntry.findFirstOrThrow({
      where: { bakeryId: bakery.bakeryId, action: 'shifts.open-dough-key' },
    })
    expect(entry).toMatchObject({ by: 'station', personId: bakery.early.personId })
  })

  it('is none of a dough that waits, of one that nobody bakes, or of the neighbour’s', async () => {
    const waiting = await db().batch.findFirstOrThrow({ where: { bakeryId: bakery.bakeryId, state: 'waiting' } })
    valueOf(await openDoughKey.call(as(tokens.early), { batchId: waiting.id }))
    expect(refusalOf(await ask(waiting.id))).toBe('batch-not-begun')
    expect(refusalOf(await ask(uuid()))).toBe('not-found')
    const neighbour = await makeBakery('Next Door')
    expect(refusalOf(await getWeighList.call(neighbour.owner.caller, { batchId: doughs[0]! }))).toBe('not-found')
  })

  it('has the lines and weights that the desk shows to the same person, in the plan’s order', async () => {
    for (const batchId of doughs) {
      const { lines } = await opened(batchId)
      const { weighed } = valueOf(await getBatch.call(bakery.early.caller, { batchId }))
      const seen = (each: { stage: object; ingredient: object; part: string; target: unknown; isSame: boolean }) => ({
        stage: each.stage,
        ingredient: each.ingredient,
        part: each.part,
        target: each.target,
        isSame: each.isSame,
      })
      expect(lines.map(seen)).toEqual(weighed!.map(seen))
    }
  })

  it('has the same lines for every dough, so that none is told by a line less', async () => {
    const [control, ...others] = await Promise.all(doughs.map((batchId) => opened(batchId)))
    const named = ({ lines }: typeof control & object) =>
      lines.map(({ stage, ingredient, part, isSame }) => [stage.id, ingredient.id, part, isSame])
    for (const other of others) expect(named(other)).toEqual(named(control!))
  })

  it('names what one sum is made of: what the formula has and what is added, on one scale', async () => {
    const { lines } = await opened(doughs[1]!)
    const salts = lines.filter(({ ingredient }) => ingredient.id === stores.ids.salt)
    expect(salts).toHaveLength(1)
    const [salt] = salts
    expect(salt).toMatchObject({ part: 'line', isSame: false, scale: { name: expect.any(String) } })
    expect(salt!.parts.map(({ isDose }) => isDose)).toEqual([false, true])
    expect(salt!.parts.reduce((sum, { massG }) => sum + massG, 0)).toBeCloseTo(salt!.target.massG, 9)
    expect(await opened(doughs[0]!).then(({ lines: of }) => of.find((each) => each.parts.length > 0))).toBeUndefined()
  })

  it('says which line is the water that the mixer is given, and of no other that it is', async () => {
    for (const batchId of doughs) {
      const { lines } = await opened(batchId)
      expect(lines.flatMap(({ isWater, ingredient, stage }) => (isWater ? [[ingredient.id, stage.kind]] : []))).toEqual(
        [[stores.ids.water, 'final_dough']],
      )
    }
  })

  it('says how a premix is made, and of what the dough has none', async () => {
    const { lines, premixes } = await opened(doughs[2]!)
    const malt = lines.find(({ ingredient }) => ingredient.id === stores.ids.malt)
    expect(malt).toMatchObject({ part: 'premix', isDusty: true })
    expect(premixes).toHaveLength(1)
    expect(premixes[0]?.portion.massG).toBeCloseTo(malt!.target.massG, 9)
    const ofControl = (await opened(doughs[0]!)).lines.find(({ part }) => part === 'premix')
    expect(ofControl?.target.massG).toBe(0)
  })

  it('gives what the rule of tolerances needs: worked out again it is the plan’s own', async () => {
    for (const batchId of doughs)
      for (const { target, apartG } of (await opened(batchId)).lines)
        if (target.toleranceG !== null)
          expect(toleranceOfLine({ targetG: target.massG, stepG: target.stepG, apartG })).toBe(target.toleranceG)
    const { scales } = await opened(doughs[0]!)
    expect(scales.map(({ name, stepG, mostG }) => [name, stepG, mostG])).toEqual([
      ['Bench scale', 1, 15_000],
      ['Dose scale', 0.1, 600],
    ])
  })
})

describe('a weighing from a tablet', () => {
  const later = (minutes: number) => new Date(testNow.getTime() + minutes * 60_000)
  const send = async (token: string, at: Date, entry: object) => {
    const { entries } = valueOf(await takeEntries.call(as(token, at), { entries: [{ kind: 'weighing', ...entry }] }))
    const [one] = entries
    return one?.outcome === 'kept' ? 'kept' : one?.refusal.code
  }
  const onAt = async (token: string, at: Date) => {
    valueOf(await goOn.call(as('nobody', at), { shiftToken: token }))
    return token
  }

  it('stands in the list, and is put right at once as a slip, later under a PIN, of others by who may', async () => {
    const batchId = doughs[0]!
    const { lines } = await opened(batchId)
    const line = lines.find(({ isSame, part }) => isSame && part === 'line')!
    const place = { batchId, stageId: line.stage.id, ingredientId: line.ingredient.id, part: line.part }
    const first = { ...place, id: uuid(), how: 'weighed', mass: '700', unit: 'g', takenAt: testNow.toISOString() }
    expect(await send(tokens.early, testNow, { ...first, confirmed: true })).toBe('kept')
    const stands = async (token = tokens.early) =>
      valueOf(await ask(batchId, token)).lines.find(
        (each) => each.stage.id === line.stage.id && each.ingredient.id === line.ingredient.id,
      )!.stands
    expect(await stands()).toMatchObject({ id: first.id, who: 'Esi', as: { how: 'weighed', massG: 700 } })
    const fix = (of: string, mass: string) => ({
      ...first,
      id: uuid(),
      mass,
      supersedesId: of,
      reason: 'Typed wrong',
      confirmed: true,
    })
    const slip = fix(first.id, '701')
    expect(await send(tokens.early, later(4), slip)).toBe('kept')
    // Eleven minutes after that it is no slip any more, and the PIN was typed a quarter of an hour ago.
    const again = fix(slip.id, '702')
    await onAt(tokens.early, later(15))
    expect(await send(tokens.early, later(15), again)).toBe('correction-wants-pin')
    expect(await send(await onAt(tokens.late, later(15)), later(15), again)).toBe('correction-not-yours')
    const fresh = await tokenAt(station, bakery.early, undefined, later(16))
    expect(await send(fresh, later(16), again)).toBe('kept')
    const ofHead = fix(again.id, '703')
    expect(await send(await onAt(tokens.head, later(17)), later(17), ofHead)).toBe('correction-wants-pin')
    expect(await send(await tokenAt(station, bakery.head, undefined, later(18)), later(18), ofHead)).toBe('kept')
    tokens.early = fresh
    expect(await db().weighing.count({ where: { bakeryId: bakery.bakeryId, batchId } })).toBe(4)
  })
})
