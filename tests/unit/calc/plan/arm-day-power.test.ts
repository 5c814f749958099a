import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { judgeArmDays } from '@/lib/calc/analysis/judge-arm-days'
import { armDayPower } from '@/lib/calc/plan/arm-day-power'
import { betterChance } from '@/lib/calc/plan/better-chance'
import { normalDeviate } from '@/lib/calc/random/normal-deviate'
import { seededRandom } from '@/lib/calc/random/seeded-random'
import { forLong } from '@/tests/support/long'

const q = {
  seed: 'days',
  runs: forLong(4000, 80_000),
  days: 4,
  doughs: 2,
  loaves: 3,
  unit: 'arm-days',
  spread: { armByDaySd: 20, doughSd: 40, loafSd: 50 },
  trueDifferences: [150, 0],
  margin: { more: 80, less: 80 },
  goodDirection: 'larger',
  confidence: 0.95,
} as const

test('the pooled part agrees with the chance in closed form', () => {
  const variance = 20 ** 2 + 40 ** 2 / 2 + 50 ** 2 / 6
  const { residualDf, criticalValue, arms } = armDayPower(q)
  expect(residualDf).toBe(6)
  for (const { trueDifference, pooledPower } of arms) {
    const chance = betterChance({
      trueDifference,
      worthwhile: 80,
      differenceSe: Math.sqrt((2 * variance) / 4),
      criticalValue,
      df: residualDf,
    })
    const se = Math.sqrt(Math.max(chance * (1 - chance), 0.001) / q.runs)
    expect(Math.abs(pooledPower - chance)).toBeLessThan(3.5 * se)
  }
})

test('with doughs as the unit it agrees with the chance in closed form, on one day too', () => {
  const spread = { armByDaySd: 0, doughSd: 40, loafSd: 50 }
  for (const days of [1, 4]) {
    const { residualDf, criticalValue, arms } = armDayPower({ ...q, unit: 'doughs', spread, days, doughs: 3 })
    expect(residualDf).toBe(2 * (days - 1) + 3 * days * 2)
    for (const { trueDifference, power, pooledPower } of arms) {
      const chance = betterChance({
        trueDifference,
        worthwhile: 80,
        differenceSe: Math.sqrt((2 * (40 ** 2 + 50 ** 2 / 3)) / (3 * days)),
        criticalValue,
        df: residualDf,
      })
      expect(power).toBe(pooledPower)
      const se = Math.sqrt(Math.max(chance * (1 - chance), 0.001) / q.runs)
      expect(Math.abs(power - chance)).toBeLessThan(3.5 * se)
    }
  }
})

test('one dough of each on one day shows nothing, whatever the unit', () => {
  for (const unit of ['arm-days', 'doughs'] as const)
    expect(() => armDayPower({ ...q, unit, days: 1, doughs: 1 })).toThrow(
      expect.objectContaining({ facts: expect.objectContaining({ reason: 'no-residual-df' }) }),
    )
})

test.each(['arm-days', 'doughs'] as const)(
  'by %s it agrees with drawing every dough and judging it by the rule itself',
  (unit) => {
    const runs = forLong(400, 6000)
    // Of these days only: what the effect does on other days is no error.
    const armByDaySd = unit === 'doughs' ? 0 : 20
    const random = seededRandom('doughs')
    let better = 0
    for (let run = 0; run < runs; run++) {
      const rows = ['1', '2', '3', '4'].flatMap((block) => {
        const day = 60 * normalDeviate(random)
        return ['control', 'b', 'c'].flatMap((arm) => {
          const cell = 2500 + day + (arm === 'b' ? 150 : 0) + armByDaySd * normalDeviate(random)
          return [1, 2].map(() => {
            const dough = cell + 40 * normalDeviate(random)
            const loaves = [1, 2, 3].map(() => dough + 50 * normalDeviate(random))
            return { arm, block, y: loaves.reduce((sum, loaf) => sum + loaf, 0) / 3 }
          })
        })
      })
      const { comparisons } = judgeArmDays({
        rows,
        arms: ['control', 'b', 'c'],
        question: 'gain',
        goodDirection: 'larger',
        margin: q.margin,
        confidence: 0.95,
        unit,
        correlation: 'model',
      })
      if (comparisons[0]!.verdict === 'better') better++
    }
    const { power } = armDayPower({ ...q, unit, spread: { ...q.spread, armByDaySd } }).arms[0]!
    expect(Math.abs(better / runs - power)).toBeLessThan(3.5 * Math.sqrt((power * (1 - power)) / runs))
  },
)

describe('one arm on complete days', () => {
  // Chance that a paired t test of D days at two-sided 5 % finds the difference on its own side: SciPy 1.17.1,
  // stats.nct.sf(t.ppf(.975, D - 1), D - 1, ncp), with ncp from the variance of a day's difference,
  // 2 (arm by day² + (dough² + loaf² / loaves) / doughs).
  test.each([
    { days: 4, doughs: 1, loaves: 4, spread: { armByDaySd: 1.5, doughSd: 3, loafSd: 2.5 }, gain: 5, chance: 0.28305 },
    { days: 4, doughs: 2, loaves: 4, spread: { armByDaySd: 1.5, doughSd: 3, loafSd: 2.5 }, gain: 5, chance: 0.42689 },
    { days: 8, doughs: 1, loaves: 4, spread: { armByDaySd: 1.5, doughSd: 3, loafSd: 2.5 }, gain: 5, chance: 0.67029 },
    { days: 6, doughs: 2, loaves: 1, spread: { armByDaySd: 3, doughSd: 3, loafSd: 0 }, gain: 6, chance: 0.6228 },
    { days: 3, doughs: 4, loaves: 1, spread: { armByDaySd: 2, doughSd: 3, loafSd: 0 }, gain: 8, chance: 0.55071 },
  ])('$days days of $doughs doughs have the chance that the noncentral t gives', ({ gain, chance, ...design }) => {
    const runs = forLong(20_000, 400_000)
    const { arms } = armDayPower({ ...q, ...design, runs, trueDifferences: [gain], margin: { more: 1e-9, less: 1e-9 } })
    expect(Math.abs(arms[0]!.power - chance)).toBeLessThan(3.5 * Math.sqrt((chance * (1 - chance)) / runs))
  })
})

describe('a spread of the effect by day', () => {
  const sd = fc.double({ min: 0, max: 200, noNaN: true })
  const asked = fc.record({
    days: fc.integer({ min: 2, max: 6 }),
    doughs: fc.integer({ min: 1, max: 3 }),
    gains: fc.array(fc.double({ min: 1, max: 3, noNaN: true }), { minLength: 1, maxLength: 3 }),
    seed: fc.string(),
  })

  test('never raises the chance to find a difference that is worth having, and the more the less', () => {
    fc.assert(
      fc.property(asked, sd, sd, ({ days, doughs, gains, seed }, some, more) => {
        const powersAt = (armByDaySd: number) =>
          armDayPower({
            ...q,
            seed,
            runs: 200,
            days,
            doughs,
            spread: { armByDaySd, doughSd: 40, loafSd: 50 },
            trueDifferences: gains.map((gain) => gain * q.margin.more),
          }).arms.map(({ power }) => power)
        const [none, first, second] = [powersAt(0), powersAt(some), powersAt(some + more)]
        none.forEach((power, i) => {
          expect(first[i]).toBeLessThanOrEqual(power)
          expect(second[i]).toBeLessThanOrEqual(first[i]!)
        })
      }),
      { numRuns: forLong(40, 400) },
    )
  })

  test('leaves more of it with every mixing day, and doughs of a day soon bring nothing more', () => {
    const powerOf = (days: number, doughs: number) =>
      armDayPower({ ...q, days, doughs, spread: { armByDaySd: 60, doughSd: 40, loafSd: 0 } }).arms[0]!.power
    const byDays = [2, 3, 4, 6, 8, 12].map((days) => powerOf(days, 1))
    expect(byDays).toEqual([...byDays].sort((a, b) => a - b))
    expect(powerOf(4, 20) - powerOf(4, 8)).toBeLessThan(0.03)
    expect(powerOf(8, 8) - powerOf(4, 8)).toBeGreaterThan(0.2)
  })
})

describe('what a plan is told', () => {
  const powerOf = (change: Partial<Parameters<typeof armDayPower>[0]>) =>
    armDayPower({ ...q, ...change }).arms[0]!.power

  test('the same doughs on more days show more, where the effect changes by day', () => {
    const spread = { armByDaySd: 60, doughSd: 40, loafSd: 0 }
    expect(powerOf({ spread, days: 8, doughs: 1 })).toBeGreaterThan(powerOf({ spread, days: 4, doughs: 2 }) + 0.1)
  })

  test('own days ask for more than the pooled error, never for less', () => {
    for (const { power, pooledPower } of armDayPower(q).arms) expect(power).toBeLessThanOrEqual(pooledPower)
  })

  test('the same seed gives the same chances, and smaller is better the other way round', () => {
    expect(armDayPower(q)).toEqual(armDayPower(q))
    const down = powerOf({ trueDifferences: [-150, 0], goodDirection: 'smaller' })
    expect(Math.abs(down - powerOf({}))).toBeLessThan(0.05)
  })

  test('one day, no spread and half a dough are refused', () => {
    expect(() => powerOf({ days: 1 })).toThrow('no-residual-df')
    expect(() => powerOf({ spread: { armByDaySd: 0, doughSd: 0, loafSd: 0 } })).toThrow('out-of-range')
    expect(() => powerOf({ doughs: 1.5 })).toThrow('not-whole')
  })
})
