import fc from 'fast-check'
import { expect, test } from 'vitest'
import { usCheckScale } from '@/lib/calc/net-weight/us-check-scale'

test('the step that is proposed is a usual one, fine enough, and the next larger is not', () =>
  fc.assert(
    fc.property(fc.double({ min: 1, max: 2630, noNaN: true }), (labelledG) => {
      const { usualDivisionG, largestDivisionG } = usCheckScale({ labelledG, divisionG: 1, capacityG: 5000 })
      expect(usualDivisionG.toExponential()).toMatch(/^[125]e/)
      expect(usualDivisionG).toBeLessThanOrEqual(largestDivisionG * (1 + 1e-9))
      expect(usualDivisionG * 2.5).toBeGreaterThan(largestDivisionG)
      const judged = (divisionG: number) => usCheckScale({ labelledG, divisionG, capacityG: 1e6 }).isFineEnough
      expect(judged(usualDivisionG)).toBe(true)
    }),
  ))

test('fine steps are no use without a hundred of them, and many are no use when coarse', () => {
  expect(usCheckScale({ labelledG: 50, divisionG: 0.5, capacityG: 50 })).toMatchObject({
    divisions: 100,
    isSuitable: true,
  })
  expect(usCheckScale({ labelledG: 45, divisionG: 0.5, capacityG: 49 })).toMatchObject({
    isFineEnough: true,
    hasEnoughDivisions: false,
    isSuitable: false,
  })
  expect(usCheckScale({ labelledG: 500, divisionG: 5, capacityG: 15_000 })).toMatchObject({
    isFineEnough: false,
    hasEnoughDivisions: true,
    isSuitable: false,
  })
})

test('a scale that cannot carry the package is refused', () =>
  expect(() => usCheckScale({ labelledG: 500, divisionG: 1, capacityG: 499 })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'capacityG', min: 500 }) }),
  ))

test('that a scale for trade must be verified is always said', () =>
  expect(usCheckScale({ labelledG: 500, divisionG: 1, capacityG: 3000 }).cautions).toEqual(
    expect.arrayContaining(['scale-must-be-verified', 'competent-person-checks']),
  ))
