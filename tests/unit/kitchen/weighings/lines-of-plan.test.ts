import { describe, expect, it } from 'vitest'
import { drawUpPlan } from '@/lib/kitchen/trials/draw-up-plan'
import { isSameInAll, linesOfPlan } from '@/lib/kitchen/weighings/lines-of-plan'
import { doseOf, plannedFacts } from '../../../support/plan-facts'

const arm = (name: string, ...doses: ReturnType<typeof doseOf>[]) => ({ name, onTop: false, doses })
const linesOf = (...arms: ReturnType<typeof arm>[]) => linesOfPlan(drawUpPlan(plannedFacts({ arms }), null))
const named = (lines: ReturnType<typeof linesOf>, name: string, part = 'line') =>
  lines.find((line) => line.ingredient.name === name && line.part === part)!

describe('the lines of a trial', () => {
  it('are the same for every dough, with 0 g where it has none', () => {
    const lines = linesOf(arm('malt', doseOf('malt', 1)), arm('more malt', doseOf('malt', 3)))
    const malt = named(lines, 'malt', 'dose')
    expect(malt).toMatchObject({ isDose: true, targets: [{ arm: 0, massG: 0 }, { arm: 1 }, { arm: 2 }] })
    expect(malt.targets[2]!.massG).toBeGreaterThan(malt.targets[1]!.massG)
    for (const { targets } of lines) expect(targets.map((target) => target.arm)).toEqual([0, 1, 2])
    expect(new Set(lines.map(({ stage, ingredient, part }) => `${stage.id} ${ingredient.id} ${part}`)).size).toBe(
      lines.length,
    )
  })

  it('add up to each dough as it is weighed', () => {
    const plan = drawUpPlan(plannedFacts({ arms: [arm('yoghurt', doseOf('yoghurt', 10))] }), null)
    const lines = linesOfPlan(plan)
    for (const { position, doughWeighedG } of plan.arms) {
      const sumG = lines.reduce((sum, { targets }) => sum + targets[position]!.massG, 0)
      expect(sumG).toBeCloseTo(doughWeighedG, 6)
    }
  })

  it('can be ticked where all doughs have the same, and only there', () => {
    const lines = linesOf(arm('malt', doseOf('malt', 3)))
    expect(isSameInAll(named(lines, 'malt', 'dose'))).toBe(false)
    for (const line of lines) expect(isSameInAll(line)).toBe(new Set(line.targets.map(({ massG }) => massG)).size === 1)
    expect(lines.some(isSameInAll)).toBe(true)
  })

  it('that the doughs are about are those dosed, lessened, and replaced, and no other', () => {
    const doses = linesOf(arm('less salt', doseOf('salt', 1, { how: 'more', value: -1 })))
      .filter(({ isDose }) => isDose)
      .map(({ ingredient }) => ingredient.name)
    expect(doses).toEqual(['salt'])
  })

  it('are judged by what sets the doughs apart, the control too', () => {
    const salt = named(linesOf(arm('less salt', doseOf('salt', -1))), 'salt')
    const [control, less] = salt.targets
    const apartG = control!.massG - less!.massG
    expect(apartG).toBeGreaterThan(0)
    const toleranceG = (targetG: number, stepG: number) => Math.max(0.05 * Math.min(targetG, apartG), stepG)
    expect(control!.toleranceG).toBeCloseTo(toleranceG(control!.massG, control!.stepG), 9)
    expect(less!.toleranceG).toBeCloseTo(toleranceG(less!.massG, less!.stepG), 9)
  })

  it('have water without a tolerance where a dough is mixed to consistency, and then nobody ticks it', () => {
    const facts = plannedFacts({ arms: [arm('flakes', doseOf('flakes', 5))] })
    const binding = facts.ingredients.map((each) => (each.name === 'flakes' ? { ...each, bindsWater: true } : each))
    const water = named(linesOfPlan(drawUpPlan({ ...facts, ingredients: binding }, null)), 'water')
    expect(water.targets.map(({ toleranceG }) => toleranceG === null)).toEqual([false, true])
    expect(isSameInAll(water)).toBe(false)
  })
})
