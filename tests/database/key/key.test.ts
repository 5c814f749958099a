import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { getPlan } from '@/lib/kitchen/trials/get-plan'
import { getWeighOut } from '@/lib/kitchen/trials/get-weigh-out'
import { openKey } from '@/lib/kitchen/trials/open-key'
import { getBatch } from '@/lib/kitchen/shifts/get-batch'
import { moveBatch } from '@/lib/kitchen/shifts/move-batch'
import { openDoughKey } from '@/lib/kitchen/shifts/open-dough-key'
import { makeApprovedTrial, type ApprovedTrial } from '../../support/approved-trial'
import { makeBakery, refusalOf, valueOf, type TestBakery } from '../../support/bakery'
import { closeAsItIs } from '../../support/close-as-it-is'
import { freshDatabase, type FreshDatabase } from '../../support/database'
import { openTheKey } from '../../support/open-the-key'

let database: FreshDatabase
let bakery: TestBakery
let neighbour: TestBakery
let trial: ApprovedTrial
let batchId: string

beforeAll(async () => {
  database = await freshDatabase()
  neighbour = await makeBakery('Next Door')
})
afterAll(() => database.drop())
beforeEach(async () => {
  bakery = await makeBakery('Mill Row')
  trial = await makeApprovedTrial(bakery)
  // The dough with milk.
  batchId = trial.batches[1]!.batchId
})

const entries = (action: string) => db().auditEntry.count({ where: { bakeryId: bakery.bakeryId, action } })
const planHash = async () =>
  (await db().trial.findUniqueOrThrow({ where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: trial.trialId } } }))
    .planHash!
const sheetsFor = async (who: 'early' | 'late' | 'head' | 'owner') =>
  valueOf(await getWeighOut.call(bakery[who].caller, { trialId: trial.trialId })).arms
const batchFor = async (who: 'early' | 'late' | 'head' | 'owner') =>
  valueOf(await getBatch.call(bakery[who].caller, { batchId }))

describe('the key of a trial', () => {
  it('is on the sheets for whoever opened it, from then on, and for nobody else, whatever their role', async () => {
    for (const who of ['early', 'head', 'owner'] as const) expect(await sheetsFor(who)).toBeNull()
    const { arms } = await openTheKey(bakery.early.caller, trial.trialId)
    expect(arms.flatMap(({ batches }) => batches.map(({ code }) => code)).sort()).toEqual(
      trial.batches.map(({ code }) => code).sort(),
    )
    expect((await batchFor('early')).key).toMatchObject({ position: 1 })
    for (const who of ['late', 'head', 'owner'] as const) {
      expect(await sheetsFor(who)).toBeNull()
      expect((await batchFor(who)).key).toBeNull()
    }
  })

  it('says in the record who opened it, once', async () => {
    await openTheKey(bakery.early.caller, trial.trialId)
    await openTheKey(bakery.early.caller, trial.trialId)
    expect(await entries('trials.open-key')).toBe(1)
    await openTheKey(bakery.head.caller, trial.trialId)
    expect(await entries('trials.open-key')).toBe(2)
  })

  it('is of its plan: one that is drawn up anew has another, and nobody opens a key that the page did not show', async () => {
    const of = { trialId: trial.trialId, planHash: await planHash() }
    expect(refusalOf(await openKey.call(bakery.early.caller, { ...of, planHash: 'b'.repeat(64) }))).toMatch(/^stale/)
    await db().openedKey.create({
      data: {
        bakeryId: bakery.bakeryId,
        trialId: trial.trialId,
        planHash: 'b'.repeat(64),
        personId: bakery.early.personId,
        at: new Date(0),
      },
    })
    expect(await sheetsFor('early')).toBeNull()
    expect((await batchFor('early')).key).toBeNull()
    expect(refusalOf(await openKey.call(neighbour.owner.caller, of))).toBe('not-found')
    expect(refusalOf(await openKey.call(bakery.early.caller, { ...of, trialId: uuid() }))).toBe('not-found')
  })

  it('is shut on a proposed plan too: no code stands beside its dough', async () => {
    const { trialId } = await makeApprovedTrial(bakery, { isUndecided: true })
    const { plan } = valueOf(await getPlan.call(bakery.owner.caller, { trialId }))
    expect(plan.order!.batches.map(({ arm }) => arm)).toEqual([null, null])
    expect(valueOf(await getWeighOut.call(bakery.owner.caller, { trialId })).arms).toBeNull()
  })

  it('is open to everybody once the readings are closed, and then nothing is noted any more', async () => {
    await closeAsItIs(bakery, trial.trialId, new Date())
    expect(await sheetsFor('early')).toHaveLength(2)
    expect((await batchFor('early')).key).toMatchObject({ position: 1 })
    valueOf(await openKey.call(bakery.early.caller, { trialId: trial.trialId, planHash: await planHash() }))
    valueOf(await openDoughKey.call(bakery.early.caller, { batchId }))
    expect(await db().openedKey.count({ where: { bakeryId: bakery.bakeryId } })).toBe(0)
    expect(await db().openedDoughKey.count({ where: { bakeryId: bakery.bakeryId } })).toBe(0)
  })

  it('opens twice at once, and stands in the record once', async () => {
    const ask = { trialId: trial.trialId, planHash: await planHash() }
    const both = await Promise.all([1, 2].map(() => openKey.call(bakery.early.caller, ask)))
    both.forEach(valueOf)
    expect(await entries('trials.open-key')).toBe(1)
  })

  it('is listed for head baker and owner on the plan, and for nobody of the shift', async () => {
    await openTheKey(bakery.early.caller, trial.trialId)
    valueOf(await openDoughKey.call(bakery.late.caller, { batchId }))
    const knowersFor = async (who: 'early' | 'head' | 'owner') =>
      valueOf(await getPlan.call(bakery[who].caller, { trialId: trial.trialId })).knowers
    const codes = [null, trial.batches[1]!.code]
    expect((await knowersFor('head')).map(({ code }) => code).sort()).toEqual(codes.sort())
    expect((await knowersFor('owner')).map(({ name }) => name).sort()).toEqual(
      [bakery.early.name, bakery.late.name].sort(),
    )
    expect(await knowersFor('early')).toEqual([])
  })
})

describe('the key of one dough', () => {
  it('is opened by anybody on the shift at once, in whatever state the dough is, and only for them', async () => {
    for (const to of ['not_baked'] as const) {
      valueOf(await moveBatch.call(bakery.early.caller, { batchId, seenRevision: 1, to, why: 'the oven is cold' }))
      valueOf(await openDoughKey.call(bakery.late.caller, { batchId }))
    }
    const { key } = await batchFor('late')
    expect(key).toMatchObject({ position: 1, name: 'With 1 % milk powder' })
    expect(key!.ingredients.join()).toContain('Milk powder')
    expect((await batchFor('early')).key).toBeNull()
    expect(await entries('shifts.open-dough-key')).toBe(1)
    const other = valueOf(await getBatch.call(bakery.late.caller, { batchId: trial.batches[0]!.batchId }))
    expect(other.key).toBeNull()
  })

  it('hides nothing of allergens from whoever has not opened it, and names no ingredient', async () => {
    await db().ingredient.updateMany({
      where: { bakeryId: bakery.bakeryId, name: { startsWith: 'Milk powder' } },
      data: { allergensCheckedAt: null },
    })
    const { cautions } = await batchFor('owner')
    expect(cautions).toEqual({
      allergens: ['gluten', 'milk'],
      unchecked: { count: 1, names: null },
      isDusty: true,
    })
    valueOf(await openDoughKey.call(bakery.owner.caller, { batchId }))
    expect((await batchFor('owner')).cautions.unchecked.names!.join()).toContain('Milk powder')
  })

  it('shows the doughs of a trial with nothing that tells them apart, but for what they are called and their state', async () => {
    const seen = await Promise.all(
      trial.batches.map(async (each) => valueOf(await getBatch.call(bakery.owner.caller, { batchId: each.batchId }))),
    )
    const [control, withMilk] = seen.map(({ measures }) => measures.map(({ range, planned }) => ({ range, planned })))
    expect(withMilk).toEqual(control)
  })

  it('is not there for a neighbour, and not before the plan is approved', async () => {
    expect(refusalOf(await openDoughKey.call(neighbour.owner.caller, { batchId }))).toBe('not-found')
    const undecided = await makeApprovedTrial(bakery, { isUndecided: true })
    expect(refusalOf(await openDoughKey.call(bakery.early.caller, { batchId: undecided.batches[0]!.batchId }))).toBe(
      'not-found',
    )
    expect(await db().openedDoughKey.count({ where: { bakeryId: bakery.bakeryId } })).toBe(0)
  })

  it('counts as no change of the dough: a stale form names who changed it', async () => {
    valueOf(await moveBatch.call(bakery.early.caller, { batchId, seenRevision: 1, to: 'not_baked', why: 'cold' }))
    valueOf(await openDoughKey.call(bakery.late.caller, { batchId }))
    const stale = await moveBatch.call(bakery.head.caller, { batchId, seenRevision: 1, to: 'not_baked', why: 'cold' })
    expect(stale).toMatchObject({ ok: false, refusal: { code: 'stale', facts: { who: bakery.early.name } } })
  })
})
