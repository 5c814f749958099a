import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import type { Caller } from '@/lib/kitchen/caller'
import { verifyRecord } from '@/lib/kitchen/audit/verify-record'
import { changeSettings } from '@/lib/kitchen/people/change-settings'
import { beginBatch } from '@/lib/kitchen/shifts/begin-batch'
import { changeDraftTrial } from '@/lib/kitchen/trials/change-draft-trial'
import { dateMixingDays } from '@/lib/kitchen/trials/date-mixing-days'
import { decidePlan } from '@/lib/kitchen/trials/decide-plan'
import { draftTrial } from '@/lib/kitchen/trials/draft-trial'
import { drawUpPlan } from '@/lib/kitchen/trials/draw-up-plan'
import { getPlan } from '@/lib/kitchen/trials/get-plan'
import { getTrial } from '@/lib/kitchen/trials/get-trial'
import { getWeighOut } from '@/lib/kitchen/trials/get-weigh-out'
import { listTrials } from '@/lib/kitchen/trials/list-trials'
import { loadPlanFacts } from '@/lib/kitchen/trials/load-plan-facts'
import { proposePlan } from '@/lib/kitchen/trials/propose-plan'
import { stopTrial } from '@/lib/kitchen/trials/stop-trial'
import { withdrawPlan } from '@/lib/kitchen/trials/withdraw-plan'
import { callerOf, makeBakery, refusalOf, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { connected, freshDatabase, type FreshDatabase } from '../../support/database'
import { makeTrialStores, trialContentOf, type TrialStores } from '../../support/trials'
import { openTheKey } from '../../support/open-the-key'

let database: FreshDatabase
let bakery: TestBakery
let neighbour: TestBakery
let stores: TrialStores
let neighbourStores: TrialStores

beforeAll(async () => {
  database = await freshDatabase()
  bakery = await makeBakery('Mill Row')
  neighbour = await makeBakery('Next Door')
  stores = await makeTrialStores(bakery)
  neighbourStores = await makeTrialStores(neighbour)
})
afterAll(() => database.drop())

const draft = async (by: Caller = bakery.early.caller, content: object = trialContentOf(stores)) =>
  valueOf(await draftTrial.call(by, { content })).trialId

async function propose(by: Caller = bakery.early.caller, trialId?: string) {
  const id = trialId ?? (await draft(by))
  const { revision } = await db().trial.findUniqueOrThrow({
    where: { bakeryId_id: { bakeryId: bakery.bakeryId, id } },
    select: { revision: true },
  })
  return valueOf(await proposePlan.call(by, { trialId: id, seenRevision: revision }))
}

type Proposed = Awaited<ReturnType<typeof propose>>
const decision = (proposed: Proposed, more: object = {}) => ({
  trialId: proposed.trialId,
  seenRevision: proposed.revision,
  planHash: proposed.planHash,
  verdict: 'approved',
  note: '',
  ...more,
})

async function approve(): Promise<Proposed> {
  const proposed = await propose()
  valueOf(await decidePlan.call(bakery.head.caller, decision(proposed)))
  return proposed
}

const stateOf = async (trialId: string) =>
  (
    await db().trial.findUniqueOrThrow({
      where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: trialId } },
      select: { state: true },
    })
  ).state

describe('a draft', () => {
  it('keeps what was written, numbers trials one after another, and is changed as a whole', async () => {
    const first = valueOf(await draftTrial.call(bakery.early.caller, { content: trialContentOf(stores) }))
    const second = valueOf(await draftTrial.call(bakery.early.caller, { content: trialContentOf(stores) }))
    expect(second.number).toBe(first.number + 1)
    const form = valueOf(await getTrial.call(bakery.early.caller, { trialId: first.trialId }))
    expect(form.trial?.content).toEqual(trialContentOf(stores))
    const changed = {
      ...trialContentOf(stores),
      question: 'Another question?',
      arms: trialContentOf(stores).arms.slice(0, 1),
    }
    valueOf(
      await changeDraftTrial.call(bakery.early.caller, { trialId: first.trialId, seenRevision: 1, content: changed }),
    )
    expect(valueOf(await getTrial.call(bakery.early.caller, { trialId: first.trialId })).trial?.content).toEqual(
      changed,
    )
    expect(
      refusalOf(
        await changeDraftTrial.call(bakery.early.caller, { trialId: first.trialId, seenRevision: 1, content: changed }),
      ),
    ).toBe('stale')
  })

  it('keeps what is set apart within each dough, and freezes it in the plan', async () => {
    const content = { ...trialContentOf(stores), factor: { name: 'Oven', levels: ['180', '220'] } }
    const trialId = await draft(bakery.early.caller, content)
    expect(valueOf(await getTrial.call(bakery.early.caller, { trialId })).trial?.content).toEqual(content)
    expect(valueOf(await getPlan.call(bakery.early.caller, { trialId })).plan.declared.factor).toEqual(content.factor)
    await propose(bakery.early.caller, trialId)
    expect(valueOf(await getPlan.call(bakery.early.caller, { trialId })).plan.declared.factor).toEqual(content.factor)
    expect(
      valueOf(await getPlan.call(bakery.early.caller, { trialId: await draft() })).plan.declared,
    ).not.toHaveProperty('factor')
  })

  it('keeps what its verdict is said of and who is not to know, each once, and freezes both in the plan', async () => {
    const content = {
      ...trialContentOf(stores),
      holdsFor: 'these_days' as const,
      blinded: ['tasting', 'measuring', 'tasting'] as const,
    }
    const trialId = valueOf(await draftTrial.call(bakery.early.caller, { content })).trialId
    const declared = { holdsFor: 'these_days', blinded: ['measuring', 'tasting'] }
    expect(valueOf(await getTrial.call(bakery.early.caller, { trialId })).trial?.content).toMatchObject(declared)
    const { planHash } = await propose(bakery.early.caller, trialId)
    expect(valueOf(await getPlan.call(bakery.early.caller, { trialId })).plan.declared).toMatchObject(declared)
    const other = await propose(
      bakery.early.caller,
      await draft(bakery.early.caller, { ...trialContentOf(stores), blinded: ['tasting'] }),
    )
    expect(other.planHash).not.toBe(planHash)
    for (const wrong of [{ holdsFor: 'always' }, { blinded: ['everybody'] }])
      expect(
        refusalOf(await draftTrial.call(bakery.early.caller, { content: { ...trialContentOf(stores), ...wrong } })),
      ).toMatch(/^invalid content\.(holdsFor|blinded\.0):wrong-choice/)
  })

  it('gets its own number when two are drafted at once', async () => {
    const drafts = await Promise.all(
      [1, 2, 3].map(() => draftTrial.call(bakery.early.caller, { content: trialContentOf(stores) })),
    )
    expect(new Set(drafts.map((each) => valueOf(each).number)).size).toBe(3)
  })

  it('names every fault at its field, all at once', async () => {
    const good = trialContentOf(stores)
    const [malt] = good.arms
    const content = {
      ...good,
      kind: 'no_worse',
      question: '',
      margin: 0,
      mixingDays: 31,
      arms: [
        { ...malt, doses: [{ ingredientId: stores.ids.malt, basis: 'pct_flour', doseOf: 'product', value: 201 }] },
      ],
    }
    expect(refusalOf(await draftTrial.call(bakery.early.caller, { content }))).toBe(
      'invalid content.kind:kind-not-yet content.question:missing content.margin:not-above content.mixingDays:too-big content.arms.0.doses.0.value:dose-too-large',
    )
  })

  it('refuses what cannot be planned: no direction, no active stated, no test dough, nothing held', async () => {
    const good = trialContentOf(stores)
    const [malt, yoghurt] = good.arms
    const tries: [object, string][] = [
      [{ measureId: stores.measureIds['dough-temp'] }, 'content.measureId:measure-without-direction'],
      [
        { arms: [malt, { ...yoghurt, doses: [{ ...yoghurt?.doses[0], doseOf: 'active' }] }] },
        'content.arms.1.doses.0.doseOf:no-active-stated',
      ],
      [{ arms: [] }, 'content.arms:arm-needed'],
      [
        { measureId: stores.measureIds['dough-temp'], kind: 'look_only', marginUnit: 'pct' },
        'content.marginUnit:pct-without-zero',
      ],
      [{ margin: 100, marginUnit: 'pct' }, 'content.margin:margin-all-of-it'],
      [{ heldTotals: [] }, 'content.heldTotals:hold-something'],
      [{ mixingDays: 30, batchesPerArm: 12 }, 'content.mixingDays:too-many-doughs'],
      [{ factor: { name: '', levels: ['180', '200'] } }, 'content.factor.name:missing'],
      [{ factor: { name: 'Oven', levels: ['180'] } }, 'content.factor.levels:too-few'],
      [{ factor: { name: 'Oven', levels: ['180', 'hot', 'HOT', '200'] } }, 'content.factor.levels:level-twice'],
      [{ factor: { name: 'Oven', levels: ['180', '\n'] } }, 'content.factor.levels:level-unfit'],
      [{ factor: { name: 'Oven', levels: ['180', '200', '220'] } }, 'content.piecesPerBatch:pieces-not-by-levels'],
    ]
    for (const [more, expected] of tries)
      expect(refusalOf(await draftTrial.call(bakery.early.caller, { content: { ...good, ...more } }))).toBe(
        `invalid ${expected}`,
      )
  })

  it('refuses doses that change nothing, take out more than is there or replace by what nobody stated', async () => {
    const good = trialContentOf(stores)
    const { ids } = stores
    const dose = (ingredientId: string, value: number, more: object = {}) => ({
      ingredientId,
      basis: 'pct_flour',
      doseOf: 'product',
      value,
      ...more,
    })
    const inPlace = (insteadOfId: string | null, equalBy: string | null) => ({ how: 'in_place', insteadOfId, equalBy })
    const tries: [object, string][] = [
      [dose(ids.malt, 0), 'value:dose-of-nothing'],
      [dose(ids.salt, 1.8, { how: 'in_all' }), 'value:dose-changes-nothing'],
      [dose(ids.malt, 0, { how: 'in_all' }), 'value:dose-changes-nothing'],
      [dose(ids.salt, -1.9), 'value:control-has-less'],
      [dose(ids.salt, -1, { how: 'in_all' }), 'value:dose-below-zero'],
      [dose(ids.yoghurt, 81, inPlace(ids.flour, 'mass')), 'value:control-has-less'],
      [dose(ids.yoghurt, 2, inPlace(ids.yoghurt, 'mass')), 'insteadOfId:instead-of-itself'],
      [dose(ids.yoghurt, 2, inPlace(null, 'mass')), 'insteadOfId:missing'],
      [dose(ids.yoghurt, 2, inPlace(neighbourStores.ids.oil, 'fat')), 'insteadOfId:wrong-choice'],
      [dose(ids.malt, 2, { ...inPlace(ids.oil, 'fat'), doseOf: 'active' }), 'doseOf:replace-by-product'],
      [dose(ids.yoghurt, 2, inPlace(ids.oil, 'sugars')), 'equalBy:not-stated-by-both'],
      [dose(ids.malt, 1, { insteadOfId: ids.oil }), 'insteadOfId:wrong-choice'],
    ]
    for (const [asked, expected] of tries) {
      const arms = [{ name: 'a', onTop: false, doses: [asked] }]
      expect(refusalOf(await draftTrial.call(bakery.early.caller, { content: { ...good, arms } }))).toBe(
        `invalid content.arms.0.doses.0.${expected}`,
      )
    }
  })

  it('keeps what lowers, leaves out and replaces, and plans it: oil left out, oil by yoghurt at equal fat', async () => {
    const good = trialContentOf(stores)
    const { ids } = stores
    const arms = [
      {
        name: 'less salt',
        onTop: false,
        doses: [
          {
            ingredientId: ids.salt,
            basis: 'pct_flour',
            doseOf: 'product',
            value: 1.2,
            how: 'in_all',
            insteadOfId: null,
            equalBy: null,
            allOfIt: false,
          },
        ],
      },
      {
        name: 'no oil',
        onTop: false,
        doses: [
          {
            ingredientId: ids.oil,
            basis: 'pct_flour',
            doseOf: 'product',
            value: -3,
            how: 'more',
            insteadOfId: null,
            equalBy: null,
            allOfIt: false,
          },
        ],
      },
      {
        name: 'yoghurt for oil',
        onTop: false,
        doses: [
          {
            ingredientId: ids.yoghurt,
            basis: 'pct_flour',
            doseOf: 'product',
            value: 0.35,
            how: 'in_place',
            insteadOfId: ids.oil,
            equalBy: 'fat',
            allOfIt: false,
          },
        ],
      },
    ]
    const { trialId } = valueOf(await draftTrial.call(bakery.early.caller, { content: { ...good, arms } }))
    expect(valueOf(await getTrial.call(bakery.early.caller, { trialId })).trial?.content.arms).toEqual(arms)
    valueOf(await proposePlan.call(bakery.early.caller, { trialId, seenRevision: 1 }))
    const { plan } = valueOf(await getPlan.call(bakery.owner.caller, { trialId }))
    const of = (arm: number, ingredientId: string) =>
      plan.arms[arm]!.lines.filter((line) => line.ingredientId === ingredientId).reduce(
        (sum, line) => sum + line.exactG,
        0,
      )
    const flourG = of(0, ids.flour)
    expect(of(1, ids.salt)).toBeCloseTo(0.012 * flourG, 6)
    expect(of(2, ids.oil)).toBe(0)
    // 0.35 % of oil has as much fat as 10 % of yoghurt with 3.5 %.
    expect(of(3, ids.yoghurt)).toBeCloseTo(0.1 * flourG, 6)
    expect(of(3, ids.oil)).toBeCloseTo(0.0265 * flourG, 6)
  })

  it("does not find a neighbour's formula, measure, equipment or ingredient", async () => {
    const content = trialContentOf(neighbourStores)
    expect(refusalOf(await draftTrial.call(bakery.early.caller, { content }))).toBe(
      'invalid content.formulaId:wrong-choice content.measureId:wrong-choice content.scaleId:wrong-choice content.mixerId:wrong-choice ' +
        'content.arms.0.doses.0.ingredientId:wrong-choice content.arms.1.doses.0.ingredientId:wrong-choice',
    )
  })

  it('is not there for a neighbour, by any command or query', async () => {
    const trialId = await draft()
    const proposed = await propose()
    const by = neighbour.owner.caller
    expect(refusalOf(await getTrial.call(by, { trialId }))).toBe('not-found')
    expect(refusalOf(await getPlan.call(by, { trialId }))).toBe('not-found')
    expect(refusalOf(await getWeighOut.call(by, { trialId: proposed.trialId }))).toBe('not-found')
    expect(
      refusalOf(
        await changeDraftTrial.call(by, { trialId, seenRevision: 1, content: trialContentOf(neighbourStores) }),
      ),
    ).toBe('not-found')
    expect(refusalOf(await proposePlan.call(by, { trialId, seenRevision: 1 }))).toBe('not-found')
    expect(refusalOf(await decidePlan.call(by, decision(proposed)))).toBe('not-found')
    expect(refusalOf(await stopTrial.call(by, { trialId, seenRevision: 1, reason: 'no' }))).toBe('not-found')
    const { waiting, sentBack, drafts } = valueOf(await listTrials.call(by, {}))
    expect([...waiting.rows, ...sentBack.rows, ...drafts.rows]).toEqual([])
  })
})

describe('a proposed plan', () => {
  it('has every dough once, in an order and with codes that the stored seed gives again', async () => {
    const { trialId } = await propose()
    const trial = await db().trial.findUniqueOrThrow({
      where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: trialId } },
      select: { seed: true },
    })
    const rows = await db().batch.findMany({
      where: { bakeryId: bakery.bakeryId, trialId },
      select: {
        code: true,
        plannedOrder: true,
        cleanDownBefore: true,
        arm: { select: { position: true } },
        mixingDay: { select: { number: true } },
      },
    })
    const facts = await loadPlanFacts(db(), bakery.bakeryId, trialId)
    const again = drawUpPlan(facts!, trial.seed).order!.batches
    const asText = (batch: { day: number; place: number; arm: number; code: string; clean: boolean }) =>
      JSON.stringify(batch)
    expect(
      rows
        .map((row) =>
          asText({
            day: row.mixingDay.number,
            place: row.plannedOrder,
            arm: row.arm.position,
            code: row.code,
            clean: row.cleanDownBefore,
          }),
        )
        .sort(),
    ).toEqual(
      again
        .map(({ day, place, arm, code, cleanDownOf }) =>
          asText({ day, place, arm, code, clean: cleanDownOf.length > 0 }),
        )
        .sort(),
    )
    expect(new Set(rows.map(({ code }) => code)).size).toBe(9)
    for (const day of [1, 2, 3]) {
      const ofDay = rows.filter((row) => row.mixingDay.number === day).sort((a, b) => a.plannedOrder - b.plannedOrder)
      expect(ofDay.map((row) => row.arm.position).sort()).toEqual([0, 1, 2])
      // Yoghurt brings milk, which the control does not have.
      expect(ofDay.at(-1)?.arm.position).toBe(2)
    }
  })

  it('weighs out a whole dough within half a mark of the scale for each line', async () => {
    const { trialId } = await propose()
    const { arms } = await openTheKey(bakery.early.caller, trialId)
    const { plan } = valueOf(await getPlan.call(bakery.early.caller, { trialId }))
    expect(arms).toHaveLength(3)
    for (const arm of arms) {
      const lines = arm.toWeigh.stages.flatMap((stage) => stage.lines)
      const planned = plan.arms[arm.position]!
      expect(Math.abs(arm.toWeigh.totalG - planned.doughG)).toBeLessThanOrEqual(lines.length * 0.5)
      for (const line of lines) expect(Number.isInteger(line.weighedG)).toBe(true)
    }
  })

  it('is not the same order twice, and its seed is not the draft’s', async () => {
    const orders = new Set<string>()
    for (let i = 0; i < 4; i++) {
      const { trialId } = await propose()
      orders.add(JSON.stringify(valueOf(await getPlan.call(bakery.early.caller, { trialId })).plan.order?.batches))
    }
    expect(orders.size).toBeGreaterThan(1)
  })

  it('cannot be changed or proposed again until it is sent back; then it is a draft without a plan', async () => {
    const proposed = await propose()
    const content = trialContentOf(stores)
    const change = { trialId: proposed.trialId, content }
    expect(
      refusalOf(await changeDraftTrial.call(bakery.early.caller, { ...change, seenRevision: proposed.revision })),
    ).toBe('stale')
    expect(
      refusalOf(
        await proposePlan.call(bakery.early.caller, { trialId: proposed.trialId, seenRevision: proposed.revision }),
      ),
    ).toBe('stale')
    expect(refusalOf(await decidePlan.call(bakery.head.caller, decision(proposed, { verdict: 'sent_back' })))).toBe(
      'invalid note:say-why',
    )
    valueOf(
      await decidePlan.call(
        bakery.head.caller,
        decision(proposed, { verdict: 'sent_back', note: 'Take four loaves more.' }),
      ),
    )
    expect(await stateOf(proposed.trialId)).toBe('draft')
    expect(await db().batch.count({ where: { bakeryId: bakery.bakeryId, trialId: proposed.trialId } })).toBe(0)
    expect(refusalOf(await getWeighOut.call(bakery.early.caller, { trialId: proposed.trialId }))).toBe('not-found')
    valueOf(await changeDraftTrial.call(bakery.early.caller, { ...change, seenRevision: proposed.revision + 1 }))
    const again = await propose(bakery.early.caller, proposed.trialId)
    expect(again.planHash).not.toBe(proposed.planHash)
    const { trial } = valueOf(await getPlan.call(bakery.head.caller, { trialId: proposed.trialId }))
    expect(trial.decisions.map(({ verdict, note, planHash }) => ({ verdict, note, planHash }))).toEqual([
      { verdict: 'sent_back', note: 'Take four loaves more.', planHash: proposed.planHash },
    ])
  })

  it('that was sent back stands so in the list, apart from the drafts that nobody has asked for', async () => {
    const proposed = await propose()
    valueOf(
      await decidePlan.call(bakery.head.caller, decision(proposed, { verdict: 'sent_back', note: 'Name the oven.' })),
    )
    const fresh = await draft()
    const { sentBack, drafts } = valueOf(await listTrials.call(bakery.early.caller, {}))
    expect(sentBack.rows.find(({ id }) => id === proposed.trialId)).toMatchObject({
      standing: 'sent_back',
      opensOn: 'plan',
    })
    expect(sentBack.rows.every(({ standing }) => standing === 'sent_back')).toBe(true)
    expect(drafts.rows.find(({ id }) => id === fresh)?.standing).toBe('draft')
    expect(drafts.rows.every(({ standing }) => standing === 'draft')).toBe(true)
    expect(valueOf(await getPlan.call(bakery.early.caller, { trialId: proposed.trialId })).trial.standing).toBe(
      'sent_back',
    )
  })

  it('is withdrawn by its proposer alone, and only before it is decided on', async () => {
    const proposed = await propose()
    const seen = { trialId: proposed.trialId, seenRevision: proposed.revision }
    expect(valueOf(await getPlan.call(bakery.early.caller, { trialId: proposed.trialId })).may.withdraw).toBe(true)
    for (const other of [bakery.late, bakery.head, bakery.owner]) {
      expect(valueOf(await getPlan.call(other.caller, { trialId: proposed.trialId })).may.withdraw).toBe(false)
      expect(refusalOf(await withdrawPlan.call(other.caller, seen))).toBe('not-your-proposal')
    }
    expect(await stateOf(proposed.trialId)).toBe('proposed')
    valueOf(await withdrawPlan.call(bakery.early.caller, seen))
    expect(await stateOf(proposed.trialId)).toBe('draft')
    expect(await db().batch.count({ where: { bakeryId: bakery.bakeryId, trialId: proposed.trialId } })).toBe(0)
    expect(refusalOf(await withdrawPlan.call(bakery.early.caller, seen))).toBe('stale')
    expect(refusalOf(await decidePlan.call(bakery.head.caller, decision(proposed)))).toBe('stale')
    const approved = await approve()
    expect(
      refusalOf(
        await withdrawPlan.call(bakery.early.caller, {
          trialId: approved.trialId,
          seenRevision: approved.revision + 1,
        }),
      ),
    ).toBe('stale')
  })

  it('is withdrawn or decided on, never both, when two press at the same moment', async () => {
    const proposed = await propose()
    const results = await Promise.all([
      withdrawPlan.call(bakery.early.caller, { trialId: proposed.trialId, seenRevision: proposed.revision }),
      decidePlan.call(bakery.head.caller, decision(proposed)),
    ])
    expect(results.filter(({ ok }) => ok)).toHaveLength(1)
    expect(await stateOf(proposed.trialId)).toBe(results[0].ok ? 'draft' : 'approved')
  })

  it('that can no longer be worked out says which dose is at fault, and can be changed', async () => {
    const sample = trialContentOf(stores)
    const content = {
      ...sample,
      arms: [
        {
          name: 'malt sugars',
          onTop: false,
          doses: [
            {
              ingredientId: stores.ids.malt,
              basis: 'pct_flour',
              doseOf: 'active',
              value: 0.3,
              how: 'more',
              insteadOfId: null,
              equalBy: null,
              allOfIt: false,
            },
          ],
        },
      ],
    }
    const trialId = await draft(bakery.early.caller, content)
    const where = { bakeryId_id: { bakeryId: bakery.bakeryId, id: stores.ids.malt } }
    const { activeName, activeShare, name } = await db().ingredient.findUniqueOrThrow({
      where,
      select: { activeName: true, activeShare: true, name: true },
    })
    await db().ingredient.update({ where, data: { activeName: null, activeShare: null } })
    const result = await getPlan.call(bakery.early.caller, { trialId })
    expect(result).toMatchObject({ ok: false, refusal: { code: 'dose-without-active', facts: { ingredient: name } } })
    expect(valueOf(await getTrial.call(bakery.early.caller, { trialId })).trial?.content).toEqual(content)
    await db().ingredient.update({ where, data: { activeName, activeShare } })
    valueOf(await getPlan.call(bakery.early.caller, { trialId }))
  })

  it('stays as it was proposed when the stores change under it', async () => {
    const proposed = await propose()
    const before = valueOf(await getPlan.call(bakery.early.caller, { trialId: proposed.trialId })).plan
    await db().ingredient.update({
      where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: stores.ids.oil } },
      data: { allergens: ['soya'] },
    })
    expect(valueOf(await getPlan.call(bakery.early.caller, { trialId: proposed.trialId })).plan).toEqual(before)
    await db().ingredient.update({
      where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: stores.ids.oil } },
      data: { allergens: [] },
    })
  })

  it('shows costs to those who see costs, and not to the shift baker who proposed it', async () => {
    const { trialId } = await propose()
    const forHead = valueOf(await getPlan.call(bakery.head.caller, { trialId }))
    expect(forHead.costs).toMatchObject({ currency: 'EUR', day: '2026-03-02' })
    const forProposer = valueOf(await getPlan.call(bakery.early.caller, { trialId }))
    expect('costs' in forProposer).toBe(false)
    expect(JSON.stringify(forProposer)).not.toMatch(/perPiece|pricePer|unpriced/)
  })
})

describe('the decision', () => {
  it('is bound to the plan that was seen, and needs the right and the password', async () => {
    const proposed = await propose()
    expect(refusalOf(await decidePlan.call(bakery.late.caller, decision(proposed)))).toBe('not-allowed')
    expect(
      refusalOf(await decidePlan.call(callerOf(bakery.head.sessionSecret, testNow, 'wrong'), decision(proposed))),
    ).toBe('wrong-password password:not-your-password')
    expect(refusalOf(await decidePlan.call(callerOf(bakery.head.sessionSecret, testNow), decision(proposed)))).toBe(
      'wrong-password password:not-your-password',
    )
    expect(refusalOf(await decidePlan.call(bakery.head.caller, decision(proposed, { planHash: 'f'.repeat(64) })))).toBe(
      'plan-moved-on',
    )
    expect(
      refusalOf(await decidePlan.call(bakery.head.caller, decision(proposed, { seenRevision: proposed.revision - 1 }))),
    ).toBe('stale')
    expect(await stateOf(proposed.trialId)).toBe('proposed')
    valueOf(await decidePlan.call(bakery.head.caller, decision(proposed)))
    expect(await stateOf(proposed.trialId)).toBe('approved')
    const { trial } = valueOf(await getPlan.call(bakery.early.caller, { trialId: proposed.trialId }))
    expect(trial.decisions).toMatchObject([
      { verdict: 'approved', personName: 'Henk', byProposer: false, planHash: proposed.planHash },
    ])
  })

  it('is not for whoever proposed it, unless the bakery lets them work alone; then the record says so', async () => {
    const proposed = await propose(bakery.head.caller)
    expect(refusalOf(await decidePlan.call(bakery.head.caller, decision(proposed)))).toBe('own-plan')
    const settings = {
      bakeryName: 'Mill Row',
      costChangeLimitPct: 1,
      dayTurnsAtH: 0,
      stationIdleMin: 10,
      pinLastsH: 4,
      language: null,
      timeZone: 'Europe/Berlin',
      locale: 'en-GB',
      currency: 'EUR',
      region: 'eu',
      massUnits: 'metric',
      temperatureUnits: 'celsius',
    }
    const allow = async (worksAlone: boolean) => {
      const { revision } = await db().bakery.findUniqueOrThrow({
        where: { bakeryId: bakery.bakeryId },
        select: { revision: true },
      })
      valueOf(await changeSettings.call(bakery.owner.caller, { ...settings, seenRevision: revision, worksAlone }))
    }
    await allow(true)
    valueOf(await decidePlan.call(bakery.head.caller, decision(proposed)))
    await allow(false)
    const { trial } = valueOf(await getPlan.call(bakery.early.caller, { trialId: proposed.trialId }))
    expect(trial.decisions).toMatchObject([
      { byProposer: true, meaning: expect.stringContaining('Approved by its proposer') as string },
    ])
  })

  it('is not for whoever wrote the draft that somebody else proposed, as long as there is a second person', async () => {
    const trialId = await draft(bakery.head.caller)
    const proposed = await propose(bakery.early.caller, trialId)
    expect(refusalOf(await decidePlan.call(bakery.head.caller, decision(proposed)))).toBe('co-author')
    expect(valueOf(await getPlan.call(bakery.head.caller, { trialId })).may).toMatchObject({
      decide: false,
      decisionBar: 'co-author',
    })
    valueOf(await decidePlan.call(bakery.owner.caller, decision(proposed)))
    expect(
      await db().planDecision.findMany({ where: { trialId }, select: { byProposer: true, byCoAuthor: true } }),
    ).toEqual([{ byProposer: false, byCoAuthor: false }])
  })

  it('is by a co-author, and says so, when everybody who may approve wrote part of the draft', async () => {
    const trialId = await draft(bakery.head.caller)
    const content = trialContentOf(stores)
    valueOf(
      await changeDraftTrial.call(bakery.owner.caller, {
        trialId,
        seenRevision: 1,
        content: { ...content, margin: content.margin + 1 },
      }),
    )
    const proposed = await propose(bakery.early.caller, trialId)
    valueOf(await decidePlan.call(bakery.head.caller, decision(proposed)))
    const { trial } = valueOf(await getPlan.call(bakery.early.caller, { trialId }))
    expect(trial.decisions).toMatchObject([
      { byProposer: false, byCoAuthor: true, meaning: expect.stringContaining('Approved by a co-author') as string },
    ])
  })

  it('stays open to whoever mended the wording of a draft only', async () => {
    const trialId = await draft(bakery.early.caller)
    const content = trialContentOf(stores)
    const worded = {
      ...content,
      question: 'Is it worth its price?',
      note: 'Read twice.',
      arms: content.arms.map((arm) => ({ ...arm, name: `${arm.name}!` })),
    }
    valueOf(await changeDraftTrial.call(bakery.head.caller, { trialId, seenRevision: 1, content: worded }))
    const proposed = await propose(bakery.early.caller, trialId)
    valueOf(await decidePlan.call(bakery.head.caller, decision(proposed)))
    const authors = await db().trialAuthor.findMany({ where: { trialId }, select: { personId: true } })
    expect(authors).toEqual([{ personId: bakery.early.personId }])
  })

  it('is one, when two who may decide press at the same moment', async () => {
    const proposed = await propose()
    const tries = await Promise.all([
      decidePlan.call(bakery.head.caller, decision(proposed)),
      decidePlan.call(bakery.owner.caller, decision(proposed, { verdict: 'declined', note: 'Not now.' })),
    ])
    expect(tries.filter((each) => each.ok)).toHaveLength(1)
    expect(tries.filter((each) => !each.ok).map((each) => refusalOf(each))).toEqual(['stale'])
    expect(await db().planDecision.count({ where: { bakeryId: bakery.bakeryId, trialId: proposed.trialId } })).toBe(1)
  })

  it('freezes the plan: neither the app nor the owner of the tables changes arms, doses, masses or what was declared', async () => {
    const { trialId } = await approve()
    const changes = [
      `UPDATE trial SET margin = 1 WHERE id = '${trialId}'`,
      `UPDATE trial SET seed = 'x' WHERE id = '${trialId}'`,
      `UPDATE trial SET flour_temp_c = 4 WHERE id = '${trialId}'`,
      `UPDATE trial SET note = 'x' WHERE id = '${trialId}'`,
      `UPDATE trial SET mixing_days = 9 WHERE id = '${trialId}'`,
      `UPDATE trial SET scale_id = NULL, number = 99 WHERE id = '${trialId}'`,
      `UPDATE trial SET state = 'draft' WHERE id = '${trialId}'`,
      `UPDATE trial SET closed_why = 'x' WHERE id = '${trialId}'`,
      `UPDATE mixing_day SET number = 99 WHERE trial_id = '${trialId}'`,
      `DELETE FROM trial WHERE id = '${trialId}'`,
      `UPDATE arm SET name = 'x' WHERE trial_id = '${trialId}'`,
      `DELETE FROM arm_dose d USING arm a WHERE a.id = d.arm_id AND a.trial_id = '${trialId}'`,
      `UPDATE arm_line l SET weighed_g = 1 FROM arm a WHERE a.id = l.arm_id AND a.trial_id = '${trialId}'`,
      `INSERT INTO arm (bakery_id, id, trial_id, position, name, on_top) VALUES ('${bakery.bakeryId}', gen_random_uuid(), '${trialId}', 5, 'late', false)`,
    ]
    for (const url of [database.appUrl, database.ownerUrl]) {
      await connected(url, async (client) => {
        for (const change of changes)
          await expect(client.query(change), change).rejects.toMatchObject({ code: 'EV003' })
      })
    }
  })

  it('holds its batches: they keep place, dough and code, and a measured one goes back by one step alone', async () => {
    const { trialId } = await approve()
    const refused = [
      `code = '999'`,
      `planned_order = 99`,
      `state = 'waiting'`,
      `state = 'in_work'`,
      `state = 'lost'`,
      `state = 'set_aside'`,
      `revision = 0`,
    ].map((change) => `UPDATE batch SET ${change} WHERE trial_id = '${trialId}'`)
    await connected(database.appUrl, async (client) => {
      await client.query(`UPDATE batch SET state = 'measured' WHERE trial_id = '${trialId}'`)
      for (const change of [...refused, `DELETE FROM batch WHERE trial_id = '${trialId}'`])
        await expect(client.query(change), change).rejects.toMatchObject({ code: 'EV005' })
      await client.query(`UPDATE batch SET state = 'baked' WHERE trial_id = '${trialId}'`)
      await client.query(`UPDATE trial SET state = 'closed' WHERE id = '${trialId}'`)
      await expect(
        client.query(`UPDATE batch SET state = 'measured' WHERE trial_id = '${trialId}'`),
      ).rejects.toMatchObject({ code: 'EV005' })
      await expect(client.query(`UPDATE trial SET state = 'stopped' WHERE id = '${trialId}'`)).rejects.toMatchObject({
        code: 'EV003',
      })
    })
  })

  it('ends a trial that is stopped with a reason, by whoever may approve', async () => {
    const { trialId, revision } = await approve()
    const stop = { trialId, seenRevision: revision + 1, reason: 'The flour is gone.' }
    expect(refusalOf(await stopTrial.call(bakery.early.caller, stop))).toBe('not-allowed')
    expect(refusalOf(await stopTrial.call(bakery.head.caller, { ...stop, reason: ' ' }))).toBe('invalid reason:missing')
    valueOf(await stopTrial.call(bakery.head.caller, stop))
    expect(refusalOf(await stopTrial.call(bakery.head.caller, { ...stop, seenRevision: revision + 2 }))).toBe('stale')
    expect(valueOf(await listTrials.call(bakery.late.caller, {})).past.rows.some(({ id }) => id === trialId)).toBe(true)
  })

  it('does not call off a trial that is being baked: that one ends with its result', async () => {
    const { trialId, revision } = await approve()
    await db().trial.update({
      where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: trialId } },
      data: { state: 'baking' },
    })
    expect(
      refusalOf(await stopTrial.call(bakery.head.caller, { trialId, seenRevision: revision + 1, reason: 'Enough.' })),
    ).toMatch(/^stale/)
  })

  it('leaves the dates of mixing days open, until the first dough of the day is begun', async () => {
    const { trialId } = await approve()
    const seen = async () => valueOf(await getPlan.call(bakery.head.caller, { trialId })).days
    expect(await seen()).toEqual(
      [1, 2, 3].slice(0, (await seen()).length).map((number) => ({ number, day: null, isBegun: false })),
    )
    const date = (days: object[], by: Caller = bakery.head.caller) => dateMixingDays.call(by, { trialId, days })
    expect(refusalOf(await date([{ number: 1, seen: null, day: '2026-03-10' }], bakery.early.caller))).toBe(
      'not-allowed',
    )
    expect(refusalOf(await date([{ number: 1, seen: null, day: '9999-03-10' }]))).toBe(
      'invalid days.0.day:day-far-away',
    )
    expect(refusalOf(await date([{ number: 30, seen: null, day: '2026-03-10' }]))).toBe('not-found')
    valueOf(await date([{ number: 1, seen: null, day: '2026-03-10' }]))
    expect((await seen())[0]).toEqual({ number: 1, day: '2026-03-10', isBegun: false })
    expect(refusalOf(await date([{ number: 1, seen: null, day: '2026-03-11' }]))).toBe('stale')
    valueOf(await date([{ number: 1, seen: '2026-03-10', day: null }]))
    const [first] = await db().batch.findMany({
      where: { bakeryId: bakery.bakeryId, trialId, mixingDay: { number: 1 }, plannedOrder: 1 },
      select: { id: true, revision: true },
    })
    valueOf(
      await beginBatch.call(bakery.early.caller, {
        batchId: first?.id,
        seenRevision: first?.revision,
        cleanDownDone: true,
      }),
    )
    expect((await seen())[0]).toEqual({ number: 1, day: null, isBegun: true })
    expect(refusalOf(await date([{ number: 1, seen: null, day: '2026-03-12' }]))).toBe('day-begun')
    const draftId = await draft()
    expect(
      refusalOf(
        await dateMixingDays.call(bakery.head.caller, {
          trialId: draftId,
          days: [{ number: 1, seen: null, day: '2026-03-10' }],
        }),
      ),
    ).toBe('trial-not-approved')
    const [neighbourDraft] = [
      await draftTrial.call(neighbour.head.caller, { content: trialContentOf(neighbourStores) }),
    ]
    expect(
      refusalOf(
        await dateMixingDays.call(bakery.head.caller, {
          trialId: valueOf(neighbourDraft).trialId,
          days: [{ number: 1, seen: null, day: '2026-03-10' }],
        }),
      ),
    ).toBe('not-found')
  })

  it('tells which dough a code stands for until the plan is approved, and again when the baking has ended', async () => {
    const { trialId, revision } = await approve()
    const arms = async () =>
      valueOf(await getPlan.call(bakery.owner.caller, { trialId })).plan.order?.batches.map(({ arm }) => arm)
    expect(new Set(await arms())).toEqual(new Set([null]))
    valueOf(
      await stopTrial.call(bakery.head.caller, { trialId, seenRevision: revision + 1, reason: 'The flour is gone.' }),
    )
    expect((await arms())?.every((arm) => arm !== null)).toBe(true)
  })

  it('stands in the record, whole', async () => {
    expect(valueOf(await verifyRecord.call(bakery.owner.caller, {}))).toMatchObject({ fault: null })
  })
})
