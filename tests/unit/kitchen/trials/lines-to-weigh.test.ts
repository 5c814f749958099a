import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { drawUpPlan } from '@/lib/kitchen/trials/draw-up-plan'
import { linesToWeigh } from '@/lib/kitchen/trials/lines-to-weigh'
import { planOfText } from '@/lib/kitchen/trials/plan-of-text'
import type { PlanFacts, PlanScale } from '@/lib/kitchen/trials/plan-types'
import plansOfFormat1 from '@/tests/fixtures/documents/plan-1.json'
import plansOfFormat2 from '@/tests/fixtures/documents/plan-2.json'
import { forLong } from '@/tests/support/long'
import { doseOf, plannedFacts } from '@/tests/support/plan-facts'

const formerPlan = plansOfFormat1[0]!
const secondPlan = plansOfFormat2[0]!

const scale = (id: string, resolutionG: number, mostG: number): PlanScale => ({
  id,
  name: id,
  resolutionG,
  repeatabilityG: 0,
  leastG: null,
  mostG,
})
const dough = scale('dough', 1, 30_000)
const dose = scale('dose', 0.1, 3_000)
const weigh = (more: Parameters<typeof plannedFacts>[0], arm = 1) => {
  const plan = drawUpPlan(plannedFacts(more), null)
  return { plan, arm: plan.arms[arm]!, toWeigh: linesToWeigh(plan, plan.arms[arm]!) }
}
const shown = ({ stages }: ReturnType<typeof linesToWeigh>) =>
  stages.flatMap(({ lines }) => lines.map(({ ingredient, weighedG, scale: on }) => [ingredient, weighedG, on?.name]))
const onTop = (ingredientId: string, value: number): PlanFacts['arms'] => [
  { name: ingredientId, onTop: true, doses: [doseOf(ingredientId, value)] },
]

/* Masses by hand from 1000 g flour, 600 g water, 30 g oil and 20 g salt a dough: arithmetic, no source. */
describe('a line to weigh', () => {
  it('is one for the same ingredient twice, with one sum and its parts', () => {
    const { toWeigh } = weigh({ arms: onTop('salt', 0.5), scale: dose, scales: [dose, dough] })
    const salt = toWeigh.stages[0]!.lines.filter(({ ingredient }) => ingredient === 'salt')
    expect(salt).toHaveLength(1)
    expect(salt[0]).toMatchObject({
      weighedG: 25,
      isDosed: true,
      parts: [
        { isDose: false, massG: 20 },
        { isDose: true, massG: 5 },
      ],
    })
    expect(toWeigh.totalG).toBe(1655)
  })

  it('is one for a formula that names an ingredient twice in a stage, and two in two stages', () => {
    const facts = plannedFacts({ arms: onTop('oil', 1) })
    const [stage] = facts.stages
    const twice = {
      ...facts,
      stages: [
        { ...stage!, lines: [...stage!.lines, { id: 'again', ingredientId: 'water', pctFlour: 5 }] },
        { id: 'p', kind: 'soaker' as const, name: '', lines: [{ id: 'pw', ingredientId: 'water', pctFlour: 10 }] },
      ],
    }
    const plan = drawUpPlan(twice, null)
    const water = linesToWeigh(plan, plan.arms[0]!).stages.map(({ lines }) =>
      lines.filter(({ ingredient }) => ingredient === 'water').map(({ parts }) => parts.length),
    )
    expect(water).toEqual([[2], [0]])
  })

  it('names the scale that can weigh it, and a 3 kg scale is no warning where a 30 kg one is there', () => {
    const { plan, toWeigh } = weigh(
      { process: { scalingMassG: 5_280 }, scale: dose, scales: [dose, dough], arms: onTop('oil', 1) },
      0,
    )
    expect(shown(toWeigh)).toEqual([
      ['flour', 3_200, 'dough'],
      ['water', 1_920, 'dose'],
      ['oil', 96, 'dose'],
      ['salt', 64, 'dose'],
    ])
    expect(toWeigh.hasSeveralScales).toBe(true)
    expect(
      plan.arms.flatMap(({ warnings }) => warnings.map(({ code }) => code)).filter((code) => code.endsWith('-scale')),
    ).toEqual([])
    const alone = weigh({ process: { scalingMassG: 5_280 }, scale: dose, scales: [dose], arms: onTop('oil', 1) }, 0)
    expect(alone.arm.warnings.map(({ code }) => code)).toContain('above-scale')
    expect(alone.toWeigh.hasSeveralScales).toBe(false)
  })

  it('is rounded to its own scale: a dose to 0.1 g where flour goes by 5 g', () => {
    const { arm } = weigh({
      scale: scale('large', 5, 30_000),
      scales: [scale('large', 5, 30_000), dose],
      arms: onTop('malt', 0.33),
    })
    expect(arm.lines.find((line) => line.dose !== null)).toMatchObject({ scaleId: 'dose', weighedG: 3.3 })
  })

  it('is a dose by itself where no scale can tell it within the whole of its ingredient', () => {
    // 40,000 g dough: 485 g salt on 5 g steps, and 4.8 g more, which the 200 g scale tells.
    const small = scale('small', 0.01, 200)
    const { toWeigh } = weigh({
      process: { scalingMassG: 40_000 },
      scale: scale('large', 5, 60_000),
      scales: [scale('large', 5, 60_000), small],
      arms: onTop('salt', 0.02),
      mixer: null,
    })
    expect(shown(toWeigh).filter(([name]) => name === 'salt')).toEqual([
      ['salt', 485, 'large'],
      ['salt', 4.85, 'small'],
    ])
  })

  it('is a premix with its flour taken off, so that each gram is weighed once', () => {
    const { arm, toWeigh, plan } = weigh({
      arms: onTop('enzyme', 0.1),
      process: { scalingMassG: 3_300 },
      scale: dough,
      scales: [dough],
    })
    // 2 g of enzyme on 2000 g flour.
    const [premix] = toWeigh.premixes
    expect(premix).toMatchObject({ ingredient: 'enzyme', carrier: 'flour' })
    const portionG = premix!.portion.massG
    const share = premix!.steps.reduce(
      (held, step) => held * (step.take.massG / (step.take.massG + step.carrier.massG)),
      1,
    )
    expect(portionG * share).toBeCloseTo(2, 2)
    const lines = toWeigh.stages[0]!.lines
    expect(lines.find(({ isPremix }) => isPremix)).toMatchObject({ ingredient: 'enzyme', weighedG: portionG })
    expect(lines.filter(({ ingredient }) => ingredient === 'enzyme')).toHaveLength(1)
    expect(lines.find(({ ingredient }) => ingredient === 'flour')?.weighedG).toBe(
      2_000 - Math.round(portionG * (1 - share)),
    )
    expect(Math.abs(toWeigh.totalG - arm.doughG)).toBeLessThanOrEqual(1)
    // The control has no premix, and all its flour.
    expect(linesToWeigh(plan, plan.arms[0]!).premixes).toEqual([])
  })

  it('needs no premix where a finer scale is there', () => {
    const { toWeigh, arm } = weigh({
      arms: onTop('enzyme', 0.1),
      scale: dough,
      scales: [dough, scale('fine', 0.01, 500)],
    })
    expect(toWeigh.premixes).toEqual([])
    expect(arm.doses[0]!.weighing).toMatchObject({ premix: null })
    expect(arm.warnings.map(({ code }) => code)).not.toContain('dose-coarse')
  })

  it('is on a mark of its scale, and all of them are the dough within a step a line', () => {
    const sets = fc.constantFrom([dough], [dough, dose], [scale('large', 5, 60_000), dose, scale('fine', 0.01, 500)])
    fc.assert(
      fc.property(
        sets,
        fc.integer({ min: 300, max: 20_000 }),
        fc.constantFrom('salt', 'enzyme', 'yoghurt', 'oil'),
        fc.double({ min: 0.02, max: 8, noNaN: true }),
        fc.boolean(),
        (scales, scalingMassG, ingredientId, value, isOnTop) => {
          const { plan } = weigh({
            scales: [...scales],
            scale: scales[0],
            process: { scalingMassG },
            mixer: null,
            declared: { kind: 'look_only' },
            arms: [{ ...onTop(ingredientId, value)[0]!, onTop: isOnTop }],
          })
          for (const arm of plan.arms) {
            const toWeigh = linesToWeigh(plan, arm)
            const lines = toWeigh.stages.flatMap((stage) => stage.lines)
            expect(new Set(lines.map(({ key }) => key)).size).toBe(lines.length)
            let allowedG = 0
            for (const { weighedG, resolutionG, parts } of lines) {
              expect(Math.abs(weighedG / resolutionG - Math.round(weighedG / resolutionG))).toBeLessThan(1e-6)
              allowedG += resolutionG * Math.max(1, parts.length)
            }
            expect(Math.abs(toWeigh.totalG - arm.doughG)).toBeLessThanOrEqual(allowedG + 1e-6)
          }
        },
      ),
      { seed: 19, numRuns: forLong(25, 400) },
    )
  })
})

describe('a plan of the first form', () => {
  const plan = () => planOfText(formerPlan.text, formerPlan.hash)

  it('is read with its one scale for every line, and its water at the temperatures of then', () => {
    const { arms, scales } = plan()
    expect(scales.map(({ id }) => id)).toEqual(['sc'])
    expect(new Set(arms.flatMap(({ lines }) => lines.map(({ scaleId }) => scaleId)))).toEqual(new Set(['sc']))
    const { water } = arms[0]!
    if (water.outcome !== 'known' || water.way.outcome !== 'mix') throw new Error('water is known there')
    expect(water.resolutionG).toBe(1)
    expect(water.way.parts.map(({ from, tempC }) => [from, tempC])).toEqual([
      ['tap', 12],
      ['hot', 55],
    ])
  })

  it('is read with doses that were all so much more than the control', () => {
    const doses = plan().arms.flatMap((arm) => arm.doses)
    expect(doses.length).toBeGreaterThan(0)
    for (const { productG, controlG, inAllG, ...dose } of doses) {
      expect(dose).toMatchObject({ how: 'more', insteadOfId: null, equalBy: null, removedG: 0 })
      expect(inAllG).toBeCloseTo(controlG + productG, 9)
    }
  })

  it('is weighed out as it was approved, with the premix that it asked for', () => {
    const { toWeigh, ...rest } = { ...plan(), toWeigh: linesToWeigh(plan(), plan().arms[1]!) }
    expect(rest.arms[1]!.doses[0]!.ingredient).toBe('enzyme')
    expect(toWeigh.premixes[0]).toMatchObject({
      ingredient: 'enzyme',
      carrier: 'flour',
      portion: { massG: 40 },
      carrierLessG: 38,
    })
    expect(shown(toWeigh)).toEqual([
      ['flour', 1_962, 'Scale'],
      ['water', 1_200, 'Scale'],
      ['oil', 60, 'Scale'],
      ['salt', 40, 'Scale'],
      ['enzyme', 40, 'Scale'],
    ])
  })

  it('is refused when it was altered', () =>
    expect(() => planOfText(formerPlan.text.replace('"format":1', '"format":2'), formerPlan.hash)).toThrow(
      /damaged-text/,
    ))
})

describe('a plan of the second form', () => {
  const plan = () => planOfText(secondPlan.text, secondPlan.hash)

  it('is read with nothing chosen for a line, and no dose that takes all of another out', () => {
    expect(plan().choices).toEqual([])
    expect(plan().arms.flatMap(({ doses }) => doses.map(({ how, allOfIt }) => [how, allOfIt]))).toEqual([
      ['more', false],
      ['in_place', false],
    ])
  })

  it('is weighed out on the scales of then', () => {
    const { arms } = plan()
    expect(shown(linesToWeigh(plan(), arms[1]!))).toContainEqual(['enzyme', 1, 'Fine scale'])
    expect(shown(linesToWeigh(plan(), arms[2]!))).toContainEqual(['flour', 1000, 'Scale'])
  })
})

describe('the water that no water can be', () => {
  it('says what the dough comes out at with the nearest, by the same heat balance', () => {
    // All water at 55 °C where flour and room are at 0: a kg of flour has what the plan's own answer to 55 °C says.
    const facts = (doughTempC: number) =>
      plannedFacts({ process: { doughTempC }, declared: { flourTempC: 0, roomTempC: 0, tapTempC: 5 } })
    const { water } = drawUpPlan(facts(45), null).arms[0]!
    if (water.outcome !== 'known' || water.way.outcome !== 'not-possible') throw new Error('no water does it')
    expect(water.way.nearestTempC).toBe(55)
    const back = drawUpPlan(facts(water.way.doughTempC ?? 0), null).arms[0]!.water
    expect(back.outcome === 'known' && back.waterTempC).toBeCloseTo(55, 6)
  })
})
