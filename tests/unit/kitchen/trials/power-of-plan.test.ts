import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { armDayPower } from '@/lib/calc/plan/arm-day-power'
import { powerOfPlan } from '@/lib/kitchen/trials/power-of-plan'
import type { OwnSpread, PlanFacts } from '@/lib/kitchen/trials/plan-types'
import { plannedFacts } from '@/tests/support/plan-facts'

const nothing: OwnSpread = { sd: 0, df: 0, trials: 0 }
const powerOf = (declared: Partial<PlanFacts['declared']>, own = nothing, arms = 1) => {
  const power = powerOfPlan({ ...plannedFacts({ declared }).declared, piecesPerBatch: 4 }, arms, own)
  if (power.outcome !== 'simulated') throw new Error(power.outcome)
  return power
}

describe('how much a difference changes by day', () => {
  it('is the assumed one until closed trials tell it, both below 8 degrees of freedom, and then the own one', () => {
    expect(powerOf({}).armByDay).toEqual({ cvPct: 1.5, from: 'assumed', assumedCvPct: 1.5, ownDf: 0, trials: 0 })
    // A spread estimated at zero brings nothing, however many trials it comes from.
    expect(powerOf({}, { sd: 0, df: 0, trials: 5 }).armByDay).toMatchObject({ cvPct: 1.5, from: 'assumed' })
    const both = powerOf({}, { sd: 0.03, df: 4, trials: 2 }).armByDay!
    expect(both).toMatchObject({ from: 'both', ownDf: 4, trials: 2 })
    expect(both.cvPct).toBeCloseTo(Math.sqrt((4 * 9 + 8 * 2.25) / 12), 12)
    expect(powerOf({}, { sd: 0.03, df: 8, trials: 4 }).armByDay).toMatchObject({ cvPct: 3, from: 'own' })
  })

  it('is left out where the verdict is of these days only', () => {
    const declared = { holdsFor: 'these_days', mixingDays: 3, batchesPerArm: 2 } as const
    const power = powerOf(declared)
    expect(power.armByDay).toBeNull()
    expect(power.otherwise).toBeNull()
    expect(powerOf(declared, { sd: 0.2, df: 30, trials: 9 })).toEqual(power)
  })

  it('never raises a chance, and lowers it the more the larger it is', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 6 }),
        fc.integer({ min: 1, max: 3 }),
        fc.double({ min: 0.001, max: 0.1, noNaN: true }),
        (mixingDays, batchesPerArm, sd) => {
          const size = { mixingDays, batchesPerArm }
          const [less, more] = [sd, 1.5 * sd].map((each) => powerOf(size, { sd: each, df: 20, trials: 5 }).rows)
          const without = [5, 7.5, 10].map((truePct) => withoutSpread(size, truePct))
          less!.forEach((row, i) => {
            expect(row.powerShare).toBeLessThanOrEqual(without[i]!)
            expect(more![i]!.powerShare).toBeLessThanOrEqual(row.powerShare)
          })
        },
      ),
      { numRuns: 10 },
    )
  })
})

describe('where the chance is low', () => {
  it('says what twice the mixing days bring, and how little as many more doughs on a day', () => {
    const { otherwise, rows } = powerOf({ mixingDays: 3, batchesPerArm: 2 })
    expect(otherwise).toMatchObject({ truePct: 7.5, mixingDays: 6, batchesPerArm: 4 })
    expect(otherwise!.truePct).toBe(rows[1]!.truePct)
    expect(otherwise!.daysPowerShare).toBe(powerOf({ mixingDays: 6, batchesPerArm: 2 }).rows[1]!.powerShare)
    expect(otherwise!.doughsPowerShare).toBe(powerOf({ mixingDays: 3, batchesPerArm: 4 }).rows[1]!.powerShare)
    expect(otherwise!.daysPowerShare).toBeGreaterThan(otherwise!.doughsPowerShare + 0.1)
  })

  it('says nothing where it is not, and where no more days can be planned', () => {
    expect(powerOf({ mixingDays: 12, batchesPerArm: 2 }).rows[1]!.powerShare).toBeGreaterThan(0.8)
    expect(powerOf({ mixingDays: 12, batchesPerArm: 2 }).otherwise).toBeNull()
    expect(powerOf({ mixingDays: 30, margin: 1 }).rows[1]!.powerShare).toBeLessThan(0.8)
    expect(powerOf({ mixingDays: 30, margin: 1 }).otherwise).toBeNull()
  })

  it('goes no further than a plan can, and never speaks for more days where doughs would bring as much', () => {
    expect(powerOf({ mixingDays: 20, batchesPerArm: 4, margin: 1 }).otherwise).toMatchObject({ mixingDays: 30 })
    expect(powerOf({ mixingDays: 2, batchesPerArm: 12, margin: 1 }).otherwise).toMatchObject({ batchesPerArm: 20 })
    for (const mixingDays of [2, 5, 16, 29])
      for (const batchesPerArm of [1, 4, 12]) {
        const { otherwise } = powerOf({ mixingDays, batchesPerArm, margin: 1 })
        if (otherwise) expect(otherwise.daysPowerShare).toBeGreaterThan(otherwise.doughsPowerShare)
      }
  })
})

function withoutSpread(size: { mixingDays: number; batchesPerArm: number }, truePct: number): number {
  return armDayPower({
    seed: 'power',
    runs: 4000,
    days: size.mixingDays,
    doughs: size.batchesPerArm,
    loaves: 4,
    unit: 'arm-days',
    spread: { armByDaySd: 0, doughSd: 0.03, loafSd: 0.025 },
    trueDifferences: [Math.log1p(truePct / 100)],
    margin: { more: Math.log1p(0.05), less: -Math.log1p(-0.05) },
    goodDirection: 'larger',
    confidence: 0.95,
  }).arms[0]!.power
}
