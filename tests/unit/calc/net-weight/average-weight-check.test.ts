import fc from 'fast-check'
import { expect, test } from 'vitest'
import { averageWeightCheck } from '@/lib/calc/net-weight/average-weight-check'

/** Ten or more packages with this mean and spread. */
const packages = (meanG: number, sdG: number, pairs: number) =>
  Array.from(
    { length: 2 * pairs },
    (_, i) => meanG + (i % 2 === 0 ? 1 : -1) * sdG * Math.sqrt((2 * pairs - 1) / (2 * pairs)),
  )

test.each([
  [4, 'mean', 500],
  [8, 'lower-limit', 485 + 8 * 1.959964],
  [12, 'absolute-limit', 470 + 12 * 3.719016],
] as const)('at a spread of %i g the rule that decides is %s', (sdG, decidedBy, leastMeanG) => {
  const check = averageWeightCheck({ nominalG: 500, contentsG: packages(505, sdG, 10) })
  expect(check.decidedBy).toBe(decidedBy)
  expect(check.leastMeanG).toBeCloseTo(leastMeanG, 4)
  expect(check.isWithinRules).toBe(505 >= leastMeanG)
})

test('a mean at the least mean has just the shares that the rules allow', () =>
  fc.assert(
    fc.property(fc.double({ min: 1, max: 30, noNaN: true }), (sdG) => {
      const { leastMeanG, decidedBy } = averageWeightCheck({ nominalG: 500, contentsG: packages(505, sdG, 10) })
      const at = averageWeightCheck({ nominalG: 500, contentsG: packages(leastMeanG, sdG, 10) })
      if (decidedBy === 'lower-limit') expect(at.expectedBelowLowerShare).toBeCloseTo(0.025, 8)
      if (decidedBy === 'absolute-limit') expect(at.expectedBelowAbsoluteShare).toBeCloseTo(0.0001, 8)
      expect(at.expectedBelowLowerShare).toBeLessThanOrEqual(0.025 + 1e-9)
      expect(at.expectedBelowAbsoluteShare).toBeLessThanOrEqual(0.0001 + 1e-9)
      expect(at.marginG).toBeCloseTo(0, 6)
    }),
  ))

test('nine packages, or packages all alike, say nothing of the spread', () => {
  expect(() => averageWeightCheck({ nominalG: 500, contentsG: new Array<number>(9).fill(501) })).toThrow(
    expect.objectContaining({ code: 'empty' }),
  )
  expect(() => averageWeightCheck({ nominalG: 500, contentsG: new Array<number>(12).fill(501) })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ reason: 'no-spread' }) }),
  )
})

test('a package found below the second limit breaks the rules, whatever the mean', () =>
  expect(averageWeightCheck({ nominalG: 500, contentsG: [...packages(560, 2, 20), 460] })).toMatchObject({
    belowLower: 1,
    belowAbsolute: 1,
    isWithinRules: false,
    marginG: expect.toSatisfy((marginG: number) => marginG > 0),
  }))
