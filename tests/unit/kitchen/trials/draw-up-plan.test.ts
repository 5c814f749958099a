import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { textOfPlan } from '@/lib/documents/plan/text-of-plan'
import { drawUpPlan } from '@/lib/kitchen/trials/draw-up-plan'
import { planOfText } from '@/lib/kitchen/trials/plan-of-text'
import type { PlanDoseAsked, PlanFacts } from '@/lib/kitchen/trials/plan-types'
import { forLong } from '@/tests/support/long'
import { doseOf as dose, plannedFacts as facts } from '@/tests/support/plan-facts'

const massesOf = (plan: ReturnType<typeof drawUpPlan>, arm: number) =>
  Object.fromEntries(plan.arms[arm]!.lines.map((line) => [line.ingredient, line.exactG]))
const codesOf = (plan: ReturnType<typeof drawUpPlan>, arm: number) => plan.arms[arm]!.warnings.map(({ code }) => code)

const halfGram: PlanFacts['scale'] = {
  id: 'sc',
  name: 'Scale',
  resolutionG: 0.5,
  repeatabilityG: 0,
  leastG: null,
  mostG: 6000,
}

describe('the masses of a dough', () => {
  it('are the formula’s, for the pieces and what is lost of the dough', () => {
    const plan = drawUpPlan(facts({ declared: { piecesPerBatch: 4 }, process: { doughLossPct: 4 } }), null)
    // 4 × 1650 / 0.96 = 6875 g of dough, 100/165 of it flour.
    expect(plan.size.doughG).toBeCloseTo(6875, 9)
    expect(massesOf(plan, 0).flour).toBeCloseTo(6875 / 1.65, 9)
  })

  it('give back the water and fat of 100 g yoghurt: 88 g water, 3.5 g oil less', () => {
    const plan = drawUpPlan(facts({ scale: halfGram }), null)
    const masses = massesOf(plan, 1)
    expect(masses.water).toBeCloseTo(512, 6)
    expect(masses.oil).toBeCloseTo(26.5, 6)
    expect(masses.flour).toBeCloseTo(1000, 9)
    expect(masses.yoghurt).toBeCloseTo(100, 9)
    expect(plan.arms[1]!.outcome).toBe('balanced')
    const total = (name: string) => plan.arms[1]!.totals.find((each) => each.total === name)
    expect(total('water')).toMatchObject({ isHeld: true })
    expect(total('water')!.differenceG).toBeCloseTo(0, 6)
    // The dough gains 100 − 88 − 3.5 g, which is 0.85 % on flour, and says so.
    expect(total('dough_mass')!.differenceG).toBeCloseTo(8.5, 6)
    expect(total('dough_mass')!.differencePctFlour).toBeCloseTo(0.85, 6)
  })

  it('are not called balanced where the scale is too coarse: 26.5 g of oil on a 1 g scale is 1.7 % of the fat off', () => {
    const plan = drawUpPlan(facts(), null)
    expect(plan.arms[1]!.outcome).toBe('not-balanced')
    const said = plan.arms[1]!.warnings.find(({ code }) => code === 'balance-scale-too-coarse')
    expect(said?.facts.total).toBe('fat')
    expect(said?.facts.offG).toBeCloseTo(0.5, 9)
    expect(said?.facts.offPct).toBeCloseTo(1.667, 3)
  })

  it('change nothing else when the dose is added on top', () => {
    const plan = drawUpPlan(facts({ arms: [{ name: 'top', onTop: true, doses: [dose('yoghurt', 10)] }] }), null)
    expect(massesOf(plan, 1)).toMatchObject({ flour: 1000, water: 600, oil: 30, salt: 20, yoghurt: 100 })
    expect(plan.arms[1]!.outcome).toBe('on-top')
  })

  it.each([
    [dose('enzyme', 0.1), 1],
    [dose('enzyme', 1, { basis: 'g_per_kg_flour' }), 1],
    [dose('enzyme', 100, { basis: 'ppm_flour' }), 0.1],
    // 100 mg/kg of the active on 1 kg of flour is 0.1 g, and the product is one tenth active.
    [dose('enzyme', 100, { basis: 'ppm_flour', doseOf: 'active' }), 1],
  ])('dose %o comes to %d g of product', (asked, grams) => {
    expect(
      massesOf(drawUpPlan(facts({ arms: [{ name: 'a', onTop: true, doses: [asked] }] }), null), 1).enzyme,
    ).toBeCloseTo(grams, 9)
  })

  it('weigh a line that does not move alike in every dough, and keep the dough within half a mark a line', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 300, max: 3000 }),
        fc.double({ min: 0.5, max: 20, noNaN: true }),
        fc.constantFrom(0.1, 1, 5),
        (scalingMassG, value, resolutionG) => {
          const plan = drawUpPlan(
            facts({
              process: { scalingMassG },
              scale: { id: 'sc', name: 'S', resolutionG, repeatabilityG: 0, leastG: null, mostG: 60_000 },
              arms: [{ name: 'a', onTop: false, doses: [dose('yoghurt', value)] }],
            }),
            null,
          )
          for (const arm of plan.arms) {
            expect(Math.abs(arm.doughWeighedG - arm.doughG)).toBeLessThanOrEqual(
              arm.lines.length * resolutionG * 0.5 + 1e-6,
            )
            arm.lines.forEach((line, l) => {
              if (line.dose === null && line.changeG === 0) expect(line.weighedG).toBe(plan.arms[0]!.lines[l]!.weighedG)
            })
          }
          expect(Math.abs(plan.arms[0]!.doughWeighedG - plan.arms[0]!.doughG)).toBeLessThanOrEqual(
            resolutionG / 2 + 1e-6,
          )
        },
      ),
      { seed: 11, numRuns: forLong(60, 1_200) },
    )
  })

  it('leave pre-ferments as they are: their lines never move', () => {
    const base = facts()
    const [stage] = base.stages
    const plan = drawUpPlan(
      {
        ...base,
        stages: [
          { id: 'p', kind: 'pre_ferment', name: 'Sponge', lines: [{ id: 'pw', ingredientId: 'water', pctFlour: 20 }] },
          { ...stage!, lines: stage!.lines },
        ],
      },
      null,
    )
    expect(plan.arms[1]!.lines.filter(({ stageId }) => stageId === 'p').map(({ changeG }) => changeG)).toEqual([0])
  })
})

describe('warnings', () => {
  const arm = (asked: PlanDoseAsked, onTop = true): PlanFacts['arms'] => [{ name: 'a', onTop, doses: [asked] }]

  it('say when a dose is outside its customary range, on what the dough has of it', () => {
    expect(codesOf(drawUpPlan(facts({ arms: arm(dose('enzyme', 0.3)) }), null), 1)).toContain('above-customary')
    expect(codesOf(drawUpPlan(facts({ arms: arm(dose('enzyme', 0.01)) }), null), 1)).toContain('below-customary')
    expect(
      codesOf(drawUpPlan(facts({ arms: arm(dose('enzyme', 0.2)) }), null), 1).filter((code) =>
        code.endsWith('customary'),
      ),
    ).toEqual([])
  })

  it('say when the scale cannot weigh the dose, by how much, and offer a premix', () => {
    const plan = drawUpPlan(facts({ arms: arm(dose('enzyme', 0.1)), process: { scalingMassG: 3300 } }), null)
    const { weighing } = plan.arms[1]!.doses[0]!
    // 2 g on a 1 g scale, k = 2: 2 · √(2/12) / 2 = 40.8 %. JCGM 100:2008, F.2.2.1. 5 % needs 2 · √(1/6) / 0.05 = 16.3 g.
    expect(weighing!.errorPct).toBeCloseTo(40.82, 2)
    expect(weighing!.leastG).toBeCloseTo(16.33, 2)
    expect(weighing!.premix?.outcome).toBe('premix')
    expect(codesOf(plan, 1)).toEqual(expect.arrayContaining(['dose-coarse', 'dust']))
  })

  it('say when a dose is rounded to nothing, or nobody chose a scale', () => {
    const coarse = { id: 'sc', name: 'Platform', resolutionG: 50, repeatabilityG: 0, leastG: null, mostG: 60_000 }
    expect(codesOf(drawUpPlan(facts({ arms: arm(dose('enzyme', 0.04)), scale: coarse }), null), 1)).toContain(
      'rounded-to-nothing',
    )
    // 0.4 g that a premix brings within reach of a 1 g scale is not nothing.
    expect(codesOf(drawUpPlan(facts({ arms: arm(dose('enzyme', 0.04)) }), null), 1)).not.toContain('rounded-to-nothing')
    expect(drawUpPlan(facts({ scale: null }), null).warnings.map(({ code }) => code)).toContain('no-scale')
  })

  it('name what is not known of a composition, and do not hold that total', () => {
    const plan = drawUpPlan(
      facts({ arms: arm(dose('flakes', 5), false), declared: { heldTotals: ['water', 'fat', 'salt'] } }),
      null,
    )
    expect(plan.arms[1]!.outcome).toBe('not-balanced')
    expect(codesOf(plan, 1)).toEqual(
      expect.arrayContaining(['composition-unknown', 'balance-not-stated', 'allergen-unchecked']),
    )
    // Water and fat of flakes count against nothing, so both are held; their salt counts and is not known.
    expect(
      plan.arms[1]!.warnings.filter(({ code }) => code === 'balance-not-stated').map(({ facts: { total } }) => total),
    ).toEqual(['salt'])
  })

  it('say when a dose brings more than can go: 300 g yoghurt a kilo bring 10.5 g fat, 900 g bring 31.5', () => {
    expect(
      drawUpPlan(
        facts({ arms: arm(dose('yoghurt', 30), false), declared: { heldTotals: ['fat'] }, scale: halfGram }),
        null,
      ).arms[1]!.outcome,
    ).toBe('balanced')
    const plan = drawUpPlan(facts({ arms: arm(dose('yoghurt', 90), false), declared: { heldTotals: ['fat'] } }), null)
    expect(plan.arms[1]!.outcome).toBe('not-balanced')
    expect(codesOf(plan, 1)).toContain('balance-dose-brings-more-than-can-go')
  })

  it('say when the mixer has too little or too much, and when one dough of each gives no verdict', () => {
    expect(codesOf(drawUpPlan(facts({ process: { scalingMassG: 400 } }), null), 0)).toContain('mixer-below')
    expect(codesOf(drawUpPlan(facts({ process: { scalingMassG: 5100 } }), null), 0)).toContain('mixer-above')
    const plan = drawUpPlan(facts({ declared: { mixingDays: 1 } }), null)
    expect(plan.warnings.map(({ code }) => code)).toContain('one-batch-per-arm')
    expect(plan.power).toEqual({ outcome: 'one-batch' })
  })
})

describe('the water', () => {
  /** Heat balance written out: flour at 20 °C, the rest at the room's, rise of the whole dough by friction. */
  const waterTempC = (rise: number) => {
    // Choi and Okos coefficients at 20 and 22 °C are the library's; here the parts' own heats are taken from the answer's definition.
    const c = { water: 4.186 }
    const flourC = specific({ water: 14, protein: 12, carbohydrate: 73, ash: 1 }, 20)
    const oilC = specific({ fat: 100 }, 22)
    const saltC = specific({ ash: 100 }, 22)
    const needed = 1000 * flourC * (26 - 20) + 30 * oilC * (26 - 22) + 20 * saltC * (26 - 22)
    const capacity = 1000 * flourC + 30 * oilC + 20 * saltC + 600 * c.water
    return 26 + (needed - rise * capacity) / (600 * c.water)
  }
  /** Y. Choi and M. R. Okos, 1986, the constant and linear terms and the square, J/(g·K). */
  const specific = (
    parts: Partial<Record<'water' | 'protein' | 'fat' | 'carbohydrate' | 'ash', number>>,
    t: number,
  ) => {
    const k = {
      water: [4.1762, -9.0864e-5, 5.4731e-6],
      protein: [2.0082, 1.2089e-3, -1.3129e-6],
      fat: [1.9842, 1.4733e-3, -4.8008e-6],
      carbohydrate: [1.5488, 1.9625e-3, -5.9399e-6],
      ash: [1.0926, 1.8896e-3, -3.6817e-6],
    }
    return Object.entries(parts).reduce((sum, [name, pct]) => {
      const [a = 0, b = 0, q = 0] = k[name as keyof typeof k]
      return sum + (pct / 100) * (a + b * t + q * t * t)
    }, 0)
  }

  it('is what the heat balance asks for, and no guess when the mixer’s friction is known', () => {
    const { water } = drawUpPlan(facts(), null).arms[0]!
    expect(water).toMatchObject({ outcome: 'known', isGuess: false, frictionC: 10 })
    if (water.outcome === 'known') expect(water.waterTempC).toBeCloseTo(waterTempC(10), 6)
  })

  it('is a guess when nothing is known of the mixer', () => {
    expect(drawUpPlan(facts({ mixer: null }), null).arms[0]!.water).toMatchObject({ outcome: 'known', isGuess: true })
  })

  it('is iced when the tap is too warm, and a clear no when no water does it', () => {
    const warm = drawUpPlan(facts({ declared: { tapTempC: 18 } }), null).arms[0]!.water
    expect(warm).toMatchObject({
      way: {
        outcome: 'mix',
        parts: [
          { from: 'tap', tempC: 18 },
          { from: 'ice', tempC: 0, isUsual: true },
        ],
      },
    })
    const waterFor = (doughTempC: number, flourTempC: number) =>
      drawUpPlan(
        facts({ process: { doughTempC }, declared: { flourTempC, roomTempC: flourTempC, tapTempC: 30 } }),
        null,
      ).arms[0]!.water
    expect(waterFor(14, 40)).toMatchObject({ way: { outcome: 'not-possible' } })
    expect(waterFor(45, 0)).toMatchObject({
      way: { outcome: 'not-possible', reason: 'hotter-than-allowed', nearestTempC: 55 },
    })
  })

  it('is less where the dose brings some of it', () => {
    const { water } = drawUpPlan(facts(), null).arms[1]!
    expect(water).toMatchObject({ waterG: 512 })
  })
})

describe('the order', () => {
  const two: PlanFacts['arms'] = [
    { name: 'enzyme', onTop: true, doses: [dose('enzyme', 0.1)] },
    { name: 'yoghurt', onTop: false, doses: [dose('yoghurt', 10)] },
    { name: 'soya', onTop: true, doses: [dose('soya flour', 5)] },
    { name: 'flakes', onTop: true, doses: [dose('flakes', 5)] },
  ]

  it('has every dough once, no code twice, and is the same from the same seed', () => {
    fc.assert(
      fc.property(
        fc.string(),
        fc.integer({ min: 1, max: 5 }),
        fc.integer({ min: 1, max: 3 }),
        (seed, mixingDays, batchesPerArm) => {
          const plan = drawUpPlan(
            facts({ arms: two, declared: { mixingDays, batchesPerArm, kind: 'look_only' } }),
            seed,
          )
          const batches = plan.order!.batches
          expect(batches).toHaveLength(plan.size.doughs)
          expect(new Set(batches.map(({ code }) => code)).size).toBe(batches.length)
          for (let day = 1; day <= mixingDays; day++) {
            const ofDay = batches.filter((batch) => batch.day === day)
            for (const arm of plan.arms)
              expect(ofDay.filter((batch) => batch.arm === arm.position)).toHaveLength(batchesPerArm)
            expect(ofDay.map(({ place }) => place)).toEqual(ofDay.map((_, i) => i + 1))
            // Doughs that bring something the control does not have come after those that do not.
            const plain = ofDay.filter(({ arm }) => arm <= 1).map(({ place }) => place)
            expect(Math.max(...plain)).toBe(plain.length)
          }
          expect(
            drawUpPlan(facts({ arms: two, declared: { mixingDays, batchesPerArm, kind: 'look_only' } }), seed),
          ).toEqual(plan)
        },
      ),
      { seed: 7, numRuns: forLong(25, 500) },
    )
  })

  it('cleans down before a dough that must not carry what went before, also over night', () => {
    const plan = drawUpPlan(facts({ arms: two }), 'seed')
    const carried = new Map<number, string[]>([
      [2, ['milk']],
      [3, ['soya']],
      [4, ['flakes']],
    ])
    let left: string[] = []
    for (const batch of plan.order!.batches) {
      const brings = carried.get(batch.arm) ?? []
      const unwanted = left.filter((each) => !brings.includes(each)).sort()
      expect(batch.cleanDownOf).toEqual(unwanted)
      left = [...new Set([...left.filter((each) => !unwanted.includes(each)), ...brings])]
    }
    expect(plan.warnings.map(({ code }) => code)).toContain('place-tied-to-allergen')
    expect(plan.order!.cleanDownAfterDay.map(({ day }) => day)).toEqual([1, 2, 3])
  })
})

describe('what the plan can see', () => {
  const powerAt = (declared: Partial<PlanFacts['declared']>) => {
    const { power } = drawUpPlan(facts({ declared: { piecesPerBatch: 4, ...declared } }), null)
    if (power.outcome !== 'simulated') throw new Error(power.outcome)
    return power.rows
  }

  it('is about half at the smallest difference worth having, more above it, and more with more days', () => {
    const few = powerAt({ mixingDays: 3 })
    const many = powerAt({ mixingDays: 12 })
    expect(few[0]!.powerShare).toBeLessThan(0.5)
    expect(many[0]!.powerShare).toBeGreaterThan(0.45)
    expect(many[0]!.powerShare).toBeLessThan(0.55)
    for (let i = 0; i < few.length; i++) expect(many[i]!.powerShare).toBeGreaterThan(few[i]!.powerShare)
    expect(few.map(({ powerShare }) => powerShare)).toEqual(
      [...few.map(({ powerShare }) => powerShare)].sort((a, b) => a - b),
    )
    const [first] = few
    // Standard error of a share out of 4000 runs.
    expect(first!.powerSe).toBeCloseTo(Math.sqrt((first!.powerShare * (1 - first!.powerShare)) / 4000), 9)
  })

  it('is about the same for a measure that should be small: as a ratio a loss is farther than a gain of as many %', () => {
    const measure = { ...facts().declared.measure, direction: 'smaller' as const }
    const [down, up] = [powerAt({ measure })[2]!.powerShare, powerAt({})[2]!.powerShare]
    expect(down).toBeGreaterThan(up)
    expect(down).toBeLessThan(up + 0.15)
  })

  it('gains nothing by more doughs on one day: without a second day there is no verdict', () => {
    const onOneDay = { mixingDays: 1, batchesPerArm: 4, piecesPerBatch: 4 }
    expect(drawUpPlan(facts({ declared: onOneDay }), null).power).toEqual({ outcome: 'no-degrees' })
  })

  it('is not made up where it cannot be known', () => {
    expect(drawUpPlan(facts({ declared: { marginUnit: 'unit' } }), null).power).toEqual({ outcome: 'margin-in-units' })
    expect(drawUpPlan(facts({ declared: { kind: 'look_only' } }), null).power).toEqual({ outcome: 'not-gain' })
  })
})

describe('the text of a plan', () => {
  it('is the same for the same plan, reads back as it was, and is refused when it was altered', () => {
    const plan = drawUpPlan(facts(), 'seed')
    const { text, hash } = textOfPlan(plan)
    expect(textOfPlan(structuredClone(plan))).toEqual({ text, hash })
    expect(planOfText(text, hash)).toEqual(plan)
    expect(() => planOfText(text.replace('"margin":5', '"margin":1'), hash)).toThrow(/damaged-text/)
  })
})
