import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { CalcError } from '@/lib/calc/error'
import type { Composition } from '@/lib/calc/formula/types'
import { textOfPlan } from '@/lib/documents/plan/text-of-plan'
import { Refusal } from '@/lib/kitchen/refusal'
import { drawUpOrRefuse } from '@/lib/kitchen/trials/draw-up-or-refuse'
import { drawUpPlan } from '@/lib/kitchen/trials/draw-up-plan'
import { planOfText } from '@/lib/kitchen/trials/plan-of-text'
import type { PlanDoseAsked, PlanFacts, PlanIngredient } from '@/lib/kitchen/trials/plan-types'
import { wordsOfRefusal } from '@/lib/kitchen/words-of-refusal'

/* Invented ingredients with round figures, so that every expectation below can be worked out by hand as a mass balance. */
const composition = (more: Partial<Composition>): Composition => ({
  waterPct: 0,
  proteinPct: 0,
  fatPct: 0,
  carbohydratePct: 0,
  sugarsPct: 0,
  fibrePct: 0,
  ashPct: null,
  sodiumMgPer100g: 0,
  ...more,
})
const ingredient = (id: string, kind: PlanIngredient['kind'], more: Partial<PlanIngredient> = {}): PlanIngredient => ({
  id,
  name: id,
  kind,
  activeName: null,
  activeShare: null,
  customary: null,
  allergens: [],
  allergensChecked: true,
  dustCaution: false,
  isEnded: false,
  composition: null,
  counts: null,
  bindsWater: false,
  ...more,
})
const ingredients: PlanIngredient[] = [
  ingredient('flour', 'flour', { composition: composition({ waterPct: 14, proteinPct: 12 }) }),
  ingredient('water', 'water'),
  ingredient('butter', 'fat', { allergens: ['milk'], composition: composition({ waterPct: 16, fatPct: 80 }) }),
  ingredient('sugar', 'sugar', { composition: composition({ sugarsPct: 100 }) }),
  ingredient('salt', 'salt', { composition: composition({ sodiumMgPer100g: 40_000 }) }),
  ingredient('oil', 'fat', { composition: composition({ fatPct: 100 }) }),
  ingredient('honey', 'sugar', { composition: composition({ waterPct: 20, sugarsPct: 80 }) }),
  ingredient('gluten', 'other', { composition: composition({ waterPct: 8, proteinPct: 75 }) }),
  ingredient('raisins', 'other', { composition: composition({ waterPct: 15, sugarsPct: 60 }) }),
  ingredient('rye', 'flour', { composition: composition({ waterPct: 14, proteinPct: 9 }) }),
  ingredient('flakes', 'other', { bindsWater: true, composition: composition({ waterPct: 7, proteinPct: 8 }) }),
  ingredient('malt A', 'malt', { activeName: 'amylase', activeShare: 0.2, composition: composition({}) }),
  ingredient('malt B', 'malt', { activeName: 'amylase', activeShare: 0.1, composition: composition({}) }),
]
const dose = (ingredientId: string, value: number, more: Partial<PlanDoseAsked> = {}): PlanDoseAsked => ({
  ingredientId,
  basis: 'pct_flour',
  doseOf: 'product',
  value,
  how: 'more',
  insteadOfId: null,
  equalBy: null,
  allOfIt: false,
  ...more,
})

/** Flour 1000, water 600, butter 100, sugar 80, salt 18, malt A 2; 100 g of the flour and 100 g of the water in a sponge. */
function factsOf(
  doses: PlanDoseAsked[],
  heldTotals: PlanFacts['declared']['heldTotals'] = ['water', 'fat'],
  resolutionG = 0.1,
  known = ingredients,
): PlanFacts {
  const scale = { id: 'sc', name: 'Scale', resolutionG, repeatabilityG: 0, leastG: null, mostG: 6000 }
  const line = (id: string, ingredientId: string, pctFlour: number) => ({ id, ingredientId, pctFlour })
  return {
    declared: {
      bakery: 'b',
      trial: 't',
      number: 1,
      kind: 'gain',
      question: 'q',
      note: '',
      formula: { id: 'f', name: 'Tin' },
      controlVersion: { id: 'v', number: 1, contentHash: null },
      measure: { id: 'm', name: 'Specific volume', unit: 'mL/g', digits: 2, level: 'piece', direction: 'larger' },
      margin: 5,
      marginUnit: 'pct',
      confidencePct: 95,
      holdsFor: 'any_day',
      blinded: [],
      mixingDays: 3,
      batchesPerArm: 1,
      piecesPerBatch: 1,
      heldTotals,
      flourTempC: 20,
      roomTempC: 22,
      tapTempC: 12,
    },
    process: {
      scalingMassG: 1800,
      doughLossPct: 0,
      doughTempC: 26,
      mixTimeS: 600,
      bulkTimeS: 3600,
      proofTimeS: 3000,
      bakeTempC: 220,
      bakeTimeS: 2100,
    },
    stages: [
      { id: 'sponge', kind: 'pre_ferment', name: 'Sponge', lines: [line('p1', 'flour', 10), line('p2', 'water', 10)] },
      {
        id: 's',
        kind: 'final_dough',
        name: '',
        lines: [
          line('l1', 'flour', 90),
          line('l2', 'water', 50),
          line('l3', 'butter', 10),
          line('l4', 'sugar', 8),
          line('l5', 'salt', 1.8),
          line('l6', 'malt A', 0.2),
        ],
      },
    ],
    arms: [{ name: 'a', onTop: false, doses }],
    ingredients: known,
    scale,
    scales: [scale],
    choices: [],
    waters: { hot: null, chilled: null, ice: null },
    mixer: null,
    ownSpread: { sd: 0, df: 0, trials: 0 },
  }
}

const planOf = (...asked: Parameters<typeof factsOf>) => drawUpPlan(factsOf(...asked), null)
const armOf = (...asked: Parameters<typeof planOf>) => {
  const arm = planOf(...asked).arms[1]!
  const massG = (name: string) =>
    arm.lines.filter((line) => line.ingredient === name).reduce((sum, line) => sum + line.exactG, 0)
  return {
    arm,
    massG,
    codes: arm.warnings.map(({ code }) => code),
    total: (name: string) => arm.totals.find((each) => each.total === name)!,
  }
}

describe('less of an ingredient', () => {
  it('is the same dough said as 6 g less or as 1.2 % in all, and nothing else moves', () => {
    for (const asked of [dose('salt', -0.6), dose('salt', 1.2, { how: 'in_all' })]) {
      const { arm, massG } = armOf([asked])
      expect(massG('salt')).toBeCloseTo(12, 9)
      expect(arm.doughG).toBeCloseTo(1794, 9)
      expect(arm.lines.filter((line) => line.changeG !== 0).map(({ ingredient: name }) => name)).toEqual(['salt'])
      expect(arm.doses[0]).toMatchObject({ productG: 0, weighing: null })
      expect(arm.doses[0]!.inAllG).toBeCloseTo(12, 9)
      expect(arm.doses[0]!.controlG).toBeCloseTo(18, 9)
    }
  })

  it('is none at all with 0 in all: the line is at nothing, and no allergen of it is left', () => {
    const { arm, massG, total } = armOf([dose('butter', 0, { how: 'in_all' })])
    expect(massG('butter')).toBe(0)
    expect(arm.allergens).toEqual([])
    // The dough is about fat, so fat is not held; its 16 g of water are made up.
    expect(total('fat').isHeld).toBe(false)
    expect(massG('water')).toBeCloseTo(616, 6)
  })

  it('is never filled up again with another line: without sugar the dough is 80 g smaller', () => {
    const { arm, codes } = armOf([dose('sugar', -8)], ['water', 'sugars'])
    expect(arm.doughG).toBeCloseTo(1720, 6)
    expect(codes).toContain('balance-asked-about')
  })

  it('goes to the mark of the scale next to it, however other lines are rounded', () => {
    const { arm } = armOf([dose('salt', -0.63), dose('honey', 3.3)], ['water'], 1)
    expect(arm.lines.find((line) => line.ingredient === 'salt')!.weighedG).toBe(12)
  })

  it('comes out of the final dough only: what is in a sponge stays', () => {
    const { arm } = armOf([dose('rye', 90, { how: 'in_place', insteadOfId: 'flour', equalBy: 'mass' })])
    expect(arm.lines.filter((line) => line.ingredient === 'flour').map(({ exactG }) => Math.round(exactG))).toEqual([
      100, 0,
    ])
    expect(() => planOf([dose('rye', 91, { how: 'in_place', insteadOfId: 'flour', equalBy: 'mass' })])).toThrow(
      CalcError,
    )
    expect(() => planOf([dose('salt', -1.81)])).toThrow(CalcError)
  })
})

describe('one ingredient in place of another', () => {
  it('butter by oil at equal fat: 80 g of oil, and water for the butter’s', () => {
    const { massG, total, arm } = armOf([dose('oil', 10, { how: 'in_place', insteadOfId: 'butter', equalBy: 'fat' })])
    expect(massG('oil')).toBeCloseTo(80, 6)
    expect(massG('butter')).toBe(0)
    expect(massG('water')).toBeCloseTo(616, 6)
    expect(total('fat').differenceG).toBeCloseTo(0, 6)
    expect(total('fat').isHeld).toBe(true)
    expect(arm.doses[0]!.removedG).toBeCloseTo(100, 9)
  })

  it('all of the butter by oil is what 10 % of it by oil is, without its amount', () => {
    const all = armOf([dose('oil', 0, { how: 'in_place', allOfIt: true, insteadOfId: 'butter', equalBy: 'fat' })])
    expect(all.massG('oil')).toBeCloseTo(80, 6)
    expect(all.massG('butter')).toBe(0)
    expect(all.arm.doses[0]!.removedG).toBeCloseTo(100, 9)
  })

  it('all of the flour is all of the final dough’s: what is in a sponge stays', () => {
    const { arm } = armOf([dose('rye', 0, { how: 'in_place', allOfIt: true, insteadOfId: 'flour', equalBy: 'mass' })])
    expect(arm.lines.filter((line) => line.ingredient === 'flour').map(({ exactG }) => Math.round(exactG))).toEqual([
      100, 0,
    ])
    expect(arm.doses[0]!.productG).toBeCloseTo(900, 9)
  })

  it('is refused where there is none, or another dose took it', () => {
    const all = dose('oil', 0, { how: 'in_place', allOfIt: true, insteadOfId: 'butter', equalBy: 'mass' })
    expect(() => planOf([{ ...all, insteadOfId: 'honey' }])).toThrow(CalcError)
    expect(() => planOf([dose('butter', 0, { how: 'in_all' }), all])).toThrow(CalcError)
  })

  it('gluten for flour: flour gives way, and the plan says to mix to consistency', () => {
    const { massG, codes, arm } = armOf([dose('gluten', 2, { how: 'in_place', insteadOfId: 'flour', equalBy: 'mass' })])
    expect(massG('flour')).toBeCloseTo(980, 9)
    expect(massG('gluten')).toBeCloseTo(20, 9)
    expect(codes).toContain('water-to-consistency')
    expect(arm.warnings.find(({ code }) => code === 'water-to-consistency')!.facts.ingredient).toBe('gluten')
  })

  it('a malt by another at equal active content: twice as much of one half as strong', () => {
    const { massG } = armOf([dose('malt B', 0.2, { how: 'in_place', insteadOfId: 'malt A', equalBy: 'active' })])
    expect(massG('malt B')).toBeCloseTo(4, 9)
    expect(massG('malt A')).toBe(0)
  })

  it('is refused where one of the two does not have what is to stay equal', () => {
    expect(() => planOf([dose('oil', 5, { how: 'in_place', insteadOfId: 'butter', equalBy: 'sugars' })])).toThrow(
      CalcError,
    )
  })

  it('shares what is there between two doses, and refuses the one that finds too little', () => {
    const half = (id: string) => dose(id, 6, { how: 'in_place', insteadOfId: 'sugar', equalBy: 'mass' })
    expect(() => planOf([half('honey'), half('raisins')])).toThrow(CalcError)
  })
})

describe('what counts', () => {
  it('the water of raisins takes no water out of a dough unless the stores say so', () => {
    expect(armOf([dose('raisins', 30)]).massG('water')).toBeCloseTo(600, 9)
    const marked = ingredients.map((each) => (each.id === 'raisins' ? { ...each, counts: ['water' as const] } : each))
    expect(armOf([dose('raisins', 30)], ['water', 'fat'], 0.1, marked).massG('water')).toBeCloseTo(555, 6)
  })

  it('marked flakes ask for water to consistency, sugar does not', () => {
    expect(armOf([dose('flakes', 2)]).codes).toContain('water-to-consistency')
    expect(armOf([dose('sugar', 2)]).codes).not.toContain('water-to-consistency')
  })
})

it('however much is taken out, no line is below nothing, what is asked for is met and masses add up', () => {
  fc.assert(
    fc.property(
      fc.constantFrom('salt', 'butter', 'sugar', 'malt A'),
      fc.double({ min: 0, max: 0.99, noNaN: true }),
      fc.constantFrom(0.1, 1, 5),
      (id, share, resolutionG) => {
        const pct = { salt: 1.8, butter: 10, sugar: 8, 'malt A': 0.2 }[id]
        const { arm, massG } = armOf(
          [dose(id, share * pct, { how: 'in_all' })],
          ['water', 'fat', 'sugars'],
          resolutionG,
        )
        expect(massG(id)).toBeCloseTo(share * pct * 10, 6)
        for (const line of arm.lines) expect(line.exactG).toBeGreaterThanOrEqual(0)
        expect(arm.doughG).toBeCloseTo(
          arm.lines.reduce((sum, line) => sum + line.exactG, 0),
          9,
        )
      },
    ),
    { seed: 1901 },
  )
})

it('a plan is read as it was written', () => {
  const plan = planOf([dose('honey', 3)])
  const now = textOfPlan(plan)
  expect(planOfText(now.text, now.hash)).toEqual(plan)
})

describe('a plan that cannot be worked out', () => {
  const saidOf = async (...asked: Parameters<typeof factsOf>) => {
    try {
      await drawUpOrRefuse(factsOf(...asked), null)
    } catch (error) {
      if (error instanceof Refusal) return wordsOfRefusal(error, 'en').sentence
    }
    return 'no refusal'
  }

  it('is refused with what to look at, in words', async () => {
    expect(await saidOf([dose('salt', -1.81)])).toBe(
      'The plan cannot be worked out. Look at the doses in the draft, and what the formula has of those ingredients.',
    )
    expect(await saidOf([dose('oil', 5, { how: 'in_place', insteadOfId: 'butter', equalBy: 'sugars' })])).toMatch(
      /Look at what stays equal where one ingredient takes the place of another/,
    )
    expect(await saidOf([dose('oil', 1)], ['fat'], 0)).toMatch(/Look at the scales, among the equipment/)
  })
})

describe('more of what the control has already', () => {
  it('makes no room for itself: 30 g more butter are 130 g, and the fat that cannot be held is said', () => {
    const { massG, codes, total } = armOf([dose('butter', 3)])
    expect(massG('butter')).toBeCloseTo(130, 9)
    // 30 g bring 24 g of fat; nothing else in the dough has any that may go.
    expect(total('fat').differenceG).toBeCloseTo(24, 9)
    expect(codes).toEqual(['balance-no-movable-line-carries-it'])
  })

  it('moves all the same where somebody chose that', () => {
    const facts = {
      ...factsOf([dose('butter', 3)]),
      choices: [{ stageKind: 'final_dough' as const, ingredientId: 'butter', mayMove: true, scaleId: null }],
    }
    const arm = drawUpPlan(facts, null).arms[1]!
    expect(
      arm.lines.filter((line) => line.ingredient === 'butter').reduce((sum, line) => sum + line.exactG, 0),
    ).toBeCloseTo(100, 6)
  })
})
