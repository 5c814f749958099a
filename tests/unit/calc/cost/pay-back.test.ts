import fc from 'fast-check'
import { expect, test } from 'vitest'
import { Decimal } from '@/lib/calc/cost/decimal'
import { payBack } from '@/lib/calc/cost/pay-back'

const q = {
  onceMinor: new Decimal(30_000),
  gainPerPieceMinor: new Decimal(4),
  lowerGainPerPieceMinor: new Decimal(1),
  upperGainPerPieceMinor: new Decimal(7),
  piecesPerWeek: 1000,
  workMinPerWeek: 60,
  wagePerHourMinor: new Decimal(1500),
  otherPerWeekMinor: new Decimal(500),
}

test('it pays back in whole weeks, and at the lower end of the gain perhaps never', () =>
  expect(payBack(q)).toMatchObject({ outcome: 'weeks', weeks: 15, leastWeeks: 6, mostWeeks: null }))

test('a gain that the extra work eats up never pays back', () => {
  const result = payBack({ ...q, workMinPerWeek: 160 })
  expect(result).toMatchObject({ outcome: 'no-pay-back', weeks: null })
  expect(result.netPerWeekMinor.toNumber()).toBe(-500)
})

test('what cost nothing to bring in pays back at once, if it gains at all', () => {
  expect(payBack({ ...q, onceMinor: new Decimal(0) }).outcome).toBe('at-once')
  expect(payBack({ ...q, onceMinor: new Decimal(0), piecesPerWeek: 0 }).outcome).toBe('no-pay-back')
})

test('after the weeks it says the money is back, and a week earlier it is not', () =>
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 1_000_000 }), fc.integer({ min: 1, max: 500 }), (once, pieces) => {
      const asked = {
        ...q,
        onceMinor: new Decimal(once),
        piecesPerWeek: pieces,
        workMinPerWeek: 0,
        otherPerWeekMinor: new Decimal(0),
      }
      const { weeks, netPerWeekMinor } = payBack(asked)
      expect(netPerWeekMinor.times(weeks!).greaterThanOrEqualTo(once)).toBe(true)
      expect(netPerWeekMinor.times(weeks! - 1).lessThan(once)).toBe(true)
    }),
  ))

test('an interval that is reversed, minutes below nothing and no number are refused', () => {
  expect(() => payBack({ ...q, lowerGainPerPieceMinor: new Decimal(5) })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ reason: 'interval-reversed' }) }),
  )
  expect(() => payBack({ ...q, workMinPerWeek: -1 })).toThrow(expect.objectContaining({ code: 'out-of-range' }))
  expect(() => payBack({ ...q, onceMinor: new Decimal(NaN) })).toThrow(expect.objectContaining({ code: 'not-finite' }))
})
