import { randomUUID } from 'node:crypto'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import type { EquipmentKind } from '@/lib/db/generated/enums'
import { chooseLines } from '@/lib/kitchen/trials/choose-lines'
import { decidePlan } from '@/lib/kitchen/trials/decide-plan'
import { draftTrial } from '@/lib/kitchen/trials/draft-trial'
import { getPlan } from '@/lib/kitchen/trials/get-plan'
import { getTrial } from '@/lib/kitchen/trials/get-trial'
import { getWeighOut } from '@/lib/kitchen/trials/get-weigh-out'
import { proposePlan } from '@/lib/kitchen/trials/propose-plan'
import { makeBakery, refusalOf, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { freshDatabase, type FreshDatabase } from '../../support/database'
import { makeTrialStores, trialContentOf, type TrialStores } from '../../support/trials'

let database: FreshDatabase
let bakery: TestBakery
let stores: TrialStores

beforeAll(async () => {
  database = await freshDatabase()
})
beforeEach(async () => {
  bakery = await makeBakery(`Mill Row ${randomUUID().slice(0, 6)}`)
  stores = await makeTrialStores(bakery)
})
afterAll(() => database.drop())

async function equip(kind: EquipmentKind, facts: object, of = bakery): Promise<string> {
  const id = randomUUID()
  await db().equipment.create({
    data: {
      bakeryId: of.bakeryId,
      id,
      kind,
      name: `${kind} ${id.slice(0, 4)}`,
      note: '',
      revision: 1,
      createdAt: testNow,
      ...facts,
    },
  })
  return id
}

type Content = ReturnType<typeof trialContentOf>
const draft = async (more: object = {}) =>
  valueOf(await draftTrial.call(bakery.early.caller, { content: { ...trialContentOf(stores), ...more } })).trialId
const choose = (trialId: string, lines: object[], seenRevision = 1, who = bakery.early) =>
  chooseLines.call(who.caller, { trialId, seenRevision, lines })
const line = (ingredientId: string, more: object = {}) => ({
  stageKind: 'final_dough',
  ingredientId,
  mayMove: null,
  scaleId: null,
  ...more,
})
const propose = async (trialId: string, seenRevision: number) =>
  valueOf(await proposePlan.call(bakery.early.caller, { trialId, seenRevision }))
const planOf = async (trialId: string) => valueOf(await getPlan.call(bakery.early.caller, { trialId }))
const arm = (name: string, dose: object) => ({
  name,
  onTop: false,
  doses: [
    {
      ingredientId: stores.ids.malt,
      basis: 'pct_flour',
      doseOf: 'product',
      value: 0,
      how: 'in_place',
      allOfIt: true,
      insteadOfId: stores.ids.oil,
      equalBy: 'mass',
      ...dose,
    },
  ],
})

describe('what is chosen for lines of a draft', () => {
  it('is kept, in the plan that is proposed, and on the sheets; what is left as usual is not', async () => {
    const fine = await equip('scale', { resolutionG: 0.01, mostG: 600 })
    const trialId = await draft()
    const lines = [
      line(stores.ids.oil, { mayMove: false }),
      line(stores.ids.salt, { scaleId: fine }),
      line(stores.ids.malt, { scaleId: fine }),
      line(stores.ids.water),
    ]
    expect(valueOf(await choose(trialId, lines))).toEqual({ revision: 2 })
    const { choosing } = await planOf(trialId)
    expect(
      choosing?.lines.find(
        ({ ingredientId, stageKind }) => ingredientId === stores.ids.oil && stageKind === 'final_dough',
      ),
    ).toMatchObject({ movesAsUsual: true, mayMove: false })
    await propose(trialId, 2)
    const { plan, choosing: none } = await planOf(trialId)
    expect(none).toBeNull()
    expect(plan.choices.map(({ ingredient, mayMove, scaleId }) => [ingredient, mayMove, scaleId]).sort()).toEqual([
      ['Malt powder', null, fine],
      ['Salt', null, fine],
      ['Sunflower oil', false, null],
    ])
    const sheets = valueOf(await getWeighOut.call(bakery.early.caller, { trialId }))
    expect(sheets.chosen.choices).toEqual(plan.choices)
    const oilOf = (arm: number) =>
      plan.arms[arm]!.lines.find(({ ingredientId }) => ingredientId === stores.ids.oil)?.exactG
    expect(oilOf(2)).toBe(oilOf(0))
  })

  it('outlives another look at the draft, and a version of the formula without that line', async () => {
    const trialId = await draft()
    valueOf(await choose(trialId, [line(stores.ids.oil, { mayMove: false })]))
    await db().trialLine.create({
      data: {
        bakeryId: bakery.bakeryId,
        trialId,
        stageKind: 'soaker',
        ingredientId: stores.ids.potatoFlakes,
        mayMove: null,
        scaleId: stores.scaleId,
      },
    })
    expect((await planOf(trialId)).plan.choices.map(({ ingredient }) => ingredient)).toEqual(['Sunflower oil'])
  })

  it('is refused for a line that is not there, a move of a pre-ferment, a scale of a neighbour, twice the same', async () => {
    const neighbour = await makeBakery(`Next Door ${randomUUID().slice(0, 6)}`)
    const theirs = await makeTrialStores(neighbour)
    const ended = await equip('scale', { resolutionG: 0.01, mostG: 600, endedAt: testNow })
    const trialId = await draft()
    const tries: [object[], string][] = [
      [[line(stores.ids.potatoFlakes, { mayMove: true })], 'invalid lines.0.mayMove:line-not-there'],
      [[line(theirs.ids.oil, { mayMove: true })], 'invalid lines.0.mayMove:line-not-there'],
      [[line(stores.ids.malt, { mayMove: true })], 'invalid lines.0.mayMove:wrong-choice'],
      [[line(stores.ids.flour, { stageKind: 'pre_ferment', mayMove: true })], 'invalid lines.0.mayMove:wrong-choice'],
      [[line(stores.ids.salt, { scaleId: theirs.scaleId })], 'invalid lines.0.scaleId:wrong-choice'],
      [[line(stores.ids.salt, { scaleId: ended })], 'invalid lines.0.scaleId:wrong-choice'],
      [[line(stores.ids.salt, { scaleId: stores.mixerId })], 'invalid lines.0.scaleId:wrong-choice'],
      [
        [line(stores.ids.salt, { mayMove: true }), line(stores.ids.salt, { mayMove: false })],
        'invalid lines:wrong-choice',
      ],
    ]
    for (const [lines, expected] of tries) expect(refusalOf(await choose(trialId, lines))).toBe(expected)
    expect(await db().trialLine.count({ where: { trialId } })).toBe(0)
    expect(refusalOf(await choose(trialId, [], 1, neighbour.owner))).toBe('not-found')
  })

  it('is refused when somebody was there first, and once the plan is proposed', async () => {
    const trialId = await draft()
    valueOf(await choose(trialId, [line(stores.ids.oil, { mayMove: false })]))
    expect(refusalOf(await choose(trialId, [line(stores.ids.oil, { mayMove: true })]))).toMatch(/^stale/)
    await propose(trialId, 2)
    expect(refusalOf(await choose(trialId, [], 3))).toMatch(/^stale/)
    expect(await db().trialLine.findMany({ where: { trialId }, select: { mayMove: true } })).toEqual([
      { mayMove: false },
    ])
  })

  it('makes whoever chose an author, who does not approve it while somebody else can; a choice of nothing makes none', async () => {
    const mine = await draft()
    valueOf(await choose(mine, [line(stores.ids.oil, { mayMove: false })], 1, bakery.head))
    const proposed = await propose(mine, 2)
    const approve = (trialId: string, { planHash, revision }: { planHash: string; revision: number }) =>
      decidePlan.call(bakery.head.caller, { trialId, seenRevision: revision, planHash, verdict: 'approved', note: '' })
    expect(refusalOf(await approve(mine, proposed))).toBe('co-author')
    const theirs = await draft()
    valueOf(await choose(theirs, [line(stores.ids.oil)], 1, bakery.head))
    valueOf(await approve(theirs, await propose(theirs, 2)))
  })

  it('is frozen with the plan, by the app and by the owner of the tables', async () => {
    const trialId = await draft()
    valueOf(await choose(trialId, [line(stores.ids.oil, { mayMove: false })]))
    const { planHash, revision } = await propose(trialId, 2)
    valueOf(
      await decidePlan.call(bakery.head.caller, {
        trialId,
        seenRevision: revision,
        planHash,
        verdict: 'approved',
        note: '',
      }),
    )
    const { bakeryId } = bakery
    const added = { bakeryId, trialId, stageKind: 'final_dough', ingredientId: stores.ids.salt, mayMove: true } as const
    await expect(db().trialLine.updateMany({ where: { trialId }, data: { mayMove: true } })).rejects.toThrow(
      /the plan is approved/,
    )
    await expect(db().trialLine.deleteMany({ where: { trialId } })).rejects.toThrow(/the plan is approved/)
    await expect(db().trialLine.create({ data: added })).rejects.toThrow(/the plan is approved/)
  })
})

describe('all of an ingredient', () => {
  it('goes out without its amount, and is read back as it was said', async () => {
    const arms = [
      arm('malt for oil', {}),
      arm('no oil', { ingredientId: stores.ids.oil, how: 'in_all', allOfIt: false, insteadOfId: null, equalBy: null }),
    ] as unknown as Content['arms']
    const trialId = await draft({ arms })
    expect(valueOf(await getTrial.call(bakery.early.caller, { trialId })).trial?.content.arms).toEqual(arms)
    await propose(trialId, 1)
    const { plan } = await planOf(trialId)
    const of = (position: number, ingredientId: string) =>
      plan.arms[position]!.lines.filter((each) => each.ingredientId === ingredientId).reduce(
        (sum, { exactG }) => sum + exactG,
        0,
      )
    expect(of(1, stores.ids.oil)).toBe(0)
    expect(of(2, stores.ids.oil)).toBe(0)
    expect(of(1, stores.ids.malt)).toBeCloseTo(of(0, stores.ids.oil), 9)
  })

  it('is refused beside an amount, for another way of dosing, and where there is none', async () => {
    const fault = async (dose: object) =>
      refusalOf(
        await draftTrial.call(bakery.early.caller, { content: { ...trialContentOf(stores), arms: [arm('a', dose)] } }),
      )
    expect(await fault({ value: 1 })).toBe('invalid content.arms.0.doses.0.value:amount-beside-all')
    expect(await fault({ how: 'in_all', insteadOfId: null, equalBy: null })).toBe(
      'invalid content.arms.0.doses.0.allOfIt:wrong-choice',
    )
    expect(await fault({ insteadOfId: stores.ids.potatoFlakes })).toBe(
      'invalid content.arms.0.doses.0.insteadOfId:control-has-none',
    )
  })
})

describe('the tap', () => {
  const tapOf = async (trialId: string) => (await planOf(trialId)).plan.declared.tapTempC

  it('is as warm as the equipment says unless the trial says otherwise, and stays so in a plan that was proposed', async () => {
    const tap = await equip('tap_water', { tempC: 9.5 })
    const byEquipment = await draft({ tapTempC: null })
    const own = await draft({ tapTempC: 14 })
    expect(await tapOf(byEquipment)).toBe(9.5)
    expect(await tapOf(own)).toBe(14)
    await propose(byEquipment, 1)
    await db().equipment.update({ where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: tap } }, data: { tempC: 17 } })
    expect(await tapOf(byEquipment)).toBe(9.5)
    const { water } = (await planOf(byEquipment)).plan.arms[0]!
    expect(water.outcome === 'known' && water.way.parts.find(({ from }) => from === 'tap')?.tempC).toBe(9.5)
  })

  it('is asked for where neither says it, also when it was taken out of use since', async () => {
    const content = { ...trialContentOf(stores), tapTempC: null }
    expect(refusalOf(await draftTrial.call(bakery.early.caller, { content }))).toBe('invalid content.tapTempC:no-tap')
    const tap = await equip('tap_water', { tempC: 9.5 })
    const trialId = await draft({ tapTempC: null })
    await db().equipment.update({
      where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: tap } },
      data: { endedAt: testNow },
    })
    expect(refusalOf(await getPlan.call(bakery.early.caller, { trialId }))).toMatch(/^no-tap/)
    expect(refusalOf(await proposePlan.call(bakery.early.caller, { trialId, seenRevision: 1 }))).toMatch(/no-tap/)
    expect(valueOf(await getTrial.call(bakery.early.caller, { trialId })).tapTempC).toBeNull()
  })
})
