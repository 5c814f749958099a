import { describe, expect, it } from 'vitest'
import { textOfPlan } from '@/lib/documents/plan/text-of-plan'
import { drawUpPlan } from '@/lib/kitchen/trials/draw-up-plan'
import { linesToChoose } from '@/lib/kitchen/trials/lines-to-choose'
import { linesToWeigh } from '@/lib/kitchen/trials/lines-to-weigh'
import { planOfText } from '@/lib/kitchen/trials/plan-of-text'
import type { LineChoice, PlanFacts, PlanIngredient, PlanScale } from '@/lib/kitchen/trials/plan-types'
import { doseOf, invented, plannedFacts } from '@/tests/support/plan-facts'

const none = {
  waterPct: 0,
  proteinPct: 0,
  fatPct: 0,
  carbohydratePct: 0,
  sugarsPct: 0,
  fibrePct: 0,
  ashPct: null,
  sodiumMgPer100g: 0,
}
const flour = invented.find(({ id }) => id === 'flour')!
/** Invented: raisins whose sugars count, honey with 80 g sugars. */
const sweet: PlanIngredient[] = [
  ...invented,
  {
    ...flour,
    id: 'raisins',
    name: 'raisins',
    kind: 'other',
    allergens: [],
    composition: { ...none, waterPct: 15, sugarsPct: 60 },
    counts: ['sugars'],
  },
  { ...flour, id: 'honey', name: 'honey', kind: 'sugar', allergens: [], composition: { ...none, sugarsPct: 80 } },
]
const choice = (ingredientId: string, more: Partial<LineChoice>): LineChoice => ({
  stageKind: 'final_dough',
  ingredientId,
  mayMove: null,
  scaleId: null,
  ...more,
})
const scale = (id: string, resolutionG: number, mostG: number): PlanScale => ({
  id,
  name: id,
  resolutionG,
  repeatabilityG: 0,
  leastG: null,
  mostG,
})
const armOf = (facts: PlanFacts, position = 1) => {
  const arm = drawUpPlan(facts, null).arms[position]!
  return {
    arm,
    massOf: (name: string) =>
      arm.lines.filter(({ ingredient }) => ingredient === name).reduce((sum, { exactG }) => sum + exactG, 0),
    codes: arm.warnings.map(({ code }) => code),
  }
}

/** 1900 g: flour 1000, water 600, raisins 300; 50 g of honey are added, sugars held, 0.1 g scale. */
const fruitDough = (choices: LineChoice[]) =>
  plannedFacts({
    process: { scalingMassG: 1900 },
    declared: { heldTotals: ['sugars'] },
    stages: [
      {
        id: 's',
        kind: 'final_dough',
        name: '',
        lines: [
          ['flour', 100],
          ['water', 60],
          ['raisins', 30],
        ].map(([id, pct], i) => ({ id: `l${i}`, ingredientId: String(id), pctFlour: Number(pct) })),
      },
    ],
    ingredients: sweet,
    arms: [{ name: 'honey', onTop: false, doses: [doseOf('honey', 5)] }],
    scale: scale('sc', 0.1, 6000),
    choices,
  })

/* Masses by hand, as balances of what each ingredient brings. */
describe('an inclusion', () => {
  it('stays unless it is freed, and the total is named', () => {
    const { massOf, codes, arm } = armOf(fruitDough([]))
    expect(massOf('raisins')).toBe(300)
    expect(codes).toContain('balance-no-movable-line-carries-it')
    expect(arm.outcome).toBe('not-balanced')
  })

  it('that is freed gives way: 40 g sugars of honey take 66.7 g of raisins with 60 % out', () => {
    const { massOf, arm } = armOf(fruitDough([choice('raisins', { mayMove: true })]))
    expect(massOf('raisins')).toBeCloseTo(300 - 40 / 0.6, 6)
    expect(arm.outcome).toBe('balanced')
  })

  it('that is freed moves nothing where it does not count in the total', () => {
    const uncounted = fruitDough([choice('raisins', { mayMove: true })])
    const { massOf } = armOf({
      ...uncounted,
      ingredients: sweet.map((one) => (one.id === 'raisins' ? { ...one, counts: [] } : one)),
    })
    expect(massOf('raisins')).toBe(300)
  })
})

describe('a line that moves by default', () => {
  it('stays when it is fixed: oil stays, and the fat of 100 g yoghurt is named', () => {
    const { massOf, codes } = armOf(plannedFacts({ choices: [choice('oil', { mayMove: false })] }))
    expect(massOf('oil')).toBe(30)
    expect(massOf('water')).toBeCloseTo(512, 6)
    expect(codes).toContain('balance-no-movable-line-carries-it')
  })

  it('stays when it is fixed although its own total is held', () => {
    const facts = plannedFacts({
      declared: { heldTotals: ['salt'] },
      arms: [{ name: 'oil', onTop: false, doses: [doseOf('oil', 2)] }],
    })
    const salted = {
      ...facts,
      ingredients: facts.ingredients.map((one) =>
        one.id === 'oil' ? { ...one, composition: { ...none, fatPct: 75, sodiumMgPer100g: 2000 } } : one,
      ),
    }
    // 20 g with 2 g sodium in 100 g bring 1 g salt (sodium × 2.5).
    expect(armOf(salted).massOf('salt')).toBeCloseTo(19, 6)
    expect(armOf({ ...salted, choices: [choice('salt', { mayMove: false })] }).massOf('salt')).toBe(20)
  })

  it('is only of the kind of stage that it was chosen for', () => {
    expect(
      armOf(plannedFacts({ choices: [choice('oil', { mayMove: false, stageKind: 'soaker' })] })).massOf('oil'),
    ).toBeCloseTo(26.5, 6)
  })
})

describe('a scale that was chosen', () => {
  const scales = [scale('bench', 1, 6000), scale('fine', 0.01, 600)]
  const facts = (choices: LineChoice[], arms?: PlanFacts['arms']) =>
    plannedFacts({ scale: scales[0]!, scales, choices, arms })
  const scaleOf = (of: PlanFacts, ingredient: string, position = 0) =>
    armOf(of, position).arm.lines.find((line) => line.ingredient === ingredient)?.scaleId

  it('is the line’s in every dough, and its steps are those of its mass', () => {
    expect(scaleOf(facts([]), 'salt')).toBe('fine')
    const chosen = facts([choice('oil', { scaleId: 'bench' })])
    expect([0, 1].map((position) => scaleOf(chosen, 'oil', position))).toEqual(['bench', 'bench'])
    expect(armOf(chosen).arm.lines.find(({ ingredient }) => ingredient === 'oil')?.weighedG).toBe(Math.round(26.5))
  })

  it('says how far off it is where another would be nearer: 20 g on marks of 1 g are off by 4.1 %', () => {
    // GUM: two readings, each rectangular of a mark: u = 1 g · √(2 / 12); k = 2.
    const warning = armOf(facts([choice('salt', { scaleId: 'bench' })]), 0).arm.warnings.find(
      ({ code }) => code === 'chosen-scale-coarse',
    )
    expect(warning?.facts).toMatchObject({ ingredient: 'salt', scale: 'bench', other: 'fine' })
    expect(warning?.facts.errorPct).toBeCloseTo((100 * 2 * Math.sqrt(2 / 12)) / 20, 9)
  })

  it('is no warning where it is good enough', () => {
    expect(
      armOf(facts([choice('salt', { scaleId: 'fine' })]), 0).codes.filter((code) => code.startsWith('chosen')),
    ).toEqual([])
  })

  it('says when it cannot carry the line', () => {
    expect(armOf(facts([choice('flour', { scaleId: 'fine' })]), 0).codes).toEqual(
      expect.arrayContaining(['chosen-scale-above']),
    )
  })

  it('says when the line is below its least load', () => {
    const least = { ...scale('platform', 0.01, 60_000), leastG: 100 }
    const of = plannedFacts({
      scale: scales[0]!,
      scales: [...scales, least],
      choices: [choice('salt', { scaleId: 'platform' })],
    })
    expect(armOf(of, 0).codes).toContain('chosen-scale-below')
  })

  it('is said to be gone where it is no longer in use, and the rule holds', () => {
    const gone = facts([choice('salt', { scaleId: 'sold' })])
    expect(drawUpPlan(gone, null).warnings).toContainEqual({
      code: 'chosen-scale-gone',
      dose: null,
      facts: { ingredient: 'salt' },
    })
    expect(scaleOf(gone, 'salt')).toBe('fine')
  })

  it('weighs a dose within its line together with it', () => {
    const more = facts(
      [choice('salt', { scaleId: 'bench' })],
      [{ name: 'salt', onTop: true, doses: [doseOf('salt', 0.2)] }],
    )
    expect(
      new Set(
        armOf(more)
          .arm.lines.filter(({ ingredient }) => ingredient === 'salt')
          .map(({ scaleId }) => scaleId),
      ).has('bench'),
    ).toBe(true)
    const plan = drawUpPlan(more, null)
    // 2 g on 1 g marks is off by 41 %, so the plan offers a premix and weighs each gram once.
    const { stages } = linesToWeigh(plan, plan.arms[1]!)
    expect(
      stages.flatMap(({ lines }) => lines.map(({ weighedG }) => weighedG)).reduce((sum, each) => sum + each, 0),
    ).toBeCloseTo(1652, 0)
  })
})

describe('what is chosen', () => {
  it('is in the plan that is frozen, and reads back', () => {
    const plan = drawUpPlan(fruitDough([choice('raisins', { mayMove: true })]), 'seed')
    expect(plan.choices).toEqual([
      { stageKind: 'final_dough', ingredientId: 'raisins', ingredient: 'raisins', mayMove: true, scaleId: null },
    ])
    const { text, hash } = textOfPlan(plan)
    expect(planOfText(text, hash)).toEqual(plan)
  })

  it('is offered for each line with what the rules say of it', () => {
    const facts = {
      ...fruitDough([choice('raisins', { mayMove: true })]),
      stages: [
        { id: 'p', kind: 'pre_ferment' as const, name: '', lines: [{ id: 'p0', ingredientId: 'flour', pctFlour: 10 }] },
        ...fruitDough([]).stages,
      ],
    }
    const lines = linesToChoose(facts, drawUpPlan(facts, null))
    expect(
      lines.map(({ stageKind, ingredient, movesAsUsual, whyNoMove, mayMove }) => [
        stageKind,
        ingredient,
        movesAsUsual,
        whyNoMove,
        mayMove,
      ]),
    ).toEqual([
      ['pre_ferment', 'flour', null, 'not-final', null],
      ['final_dough', 'flour', false, null, null],
      ['final_dough', 'water', true, null, null],
      ['final_dough', 'raisins', false, null, true],
      ['final_dough', 'honey', null, 'dosed', null],
    ])
  })
})
