import { expect, test } from 'vitest'
import { riseAt } from '@/lib/calc/fermentation/rise-curve'
import { timeToRise } from '@/lib/calc/fermentation/time-to-rise'
import { normalDeviate } from '@/lib/calc/random/normal-deviate'
import { seededRandom } from '@/lib/calc/random/seeded-random'
import { forLong } from '@/tests/support/long'

const times = [0, 15, 30, 45, 60, 75, 90, 105, 120, 150]
const curve = { kind: 'gompertz', mostRisePct: 130, steepestPctPerMin: 1.6, lagMin: 25 } as const
const readings = times.map((atMin) => ({ atMin, risePct: riseAt({ ...curve, atMin }).risePct }))
const q = { readings, kind: curve.kind, confidenceShare: 0.95 }

test.each([20, 50, 90, 125])('at the time found, the dough has risen by %i %%', (targetRisePct) => {
  const { atMin } = timeToRise({ ...q, targetRisePct })
  expect(riseAt({ ...curve, atMin }).risePct).toBeCloseTo(targetRisePct, 4)
})

test('the interval holds the true time about as often as it says', () => {
  const runs = forLong(400, 4_000)
  const random = seededRandom('time-to-rise')
  let held = 0
  const truth = timeToRise({ ...q, targetRisePct: 80 }).atMin
  for (let run = 0; run < runs; run++) {
    const scattered = readings.map((r) => ({ ...r, risePct: r.risePct + 2 * normalDeviate(random) }))
    const { lowerMin, upperMin } = timeToRise({ ...q, readings: scattered, targetRisePct: 80 })
    if (lowerMin <= truth && truth <= upperMin) held++
  }
  // Four standard errors of a share of 0.95, and a hundredth for the first order of the delta method.
  expect(Math.abs(held / runs - 0.95)).toBeLessThan(0.01 + 4 * Math.sqrt((0.95 * 0.05) / runs))
})

test('a time after the last reading says that it was not measured', () =>
  expect(timeToRise({ ...q, readings: readings.slice(0, 7), targetRisePct: 110 }).warnings).toContain(
    'beyond-readings',
  ))

test('a rise that the dough never reaches is refused, with where it ends', () => {
  expect(() => timeToRise({ ...q, targetRisePct: 140 })).toThrow(
    expect.objectContaining({
      code: 'not-possible',
      facts: expect.objectContaining({ reason: 'target-not-reached', max: expect.closeTo(130, 3) }),
    }),
  )
  expect(() => timeToRise({ ...q, targetRisePct: 0 })).toThrow(expect.objectContaining({ code: 'out-of-range' }))
  expect(() => timeToRise({ ...q, targetRisePct: 50, confidenceShare: 95 })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'confidenceShare' }) }),
  )
})
