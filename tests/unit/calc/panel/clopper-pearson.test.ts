import fc from 'fast-check'
import { expect, test } from 'vitest'
import { binomialTail } from '@/lib/calc/distributions/binomial-tail'
import { clopperPearson } from '@/lib/calc/panel/clopper-pearson'

const counts = fc
  .integer({ min: 1, max: 200 })
  .chain((tasters) => fc.record({ tasters: fc.constant(tasters), correct: fc.integer({ min: 0, max: tasters }) }))

test('at each limit what was seen, or beyond, has the chance asked for', () => {
  fc.assert(
    fc.property(counts, fc.constantFrom(0.005, 0.025, 0.1), ({ tasters, correct }, tailShare) => {
      const { lowShare, highShare } = clopperPearson({ tasters, correct, tailShare })
      const chance = (share: number, tail: 'lower' | 'upper') => binomialTail({ k: correct, n: tasters, share, tail })
      if (correct > 0) expect(Math.abs(chance(lowShare, 'upper') / tailShare - 1)).toBeLessThan(1e-9)
      if (correct < tasters) expect(Math.abs(chance(highShare, 'lower') / tailShare - 1)).toBeLessThan(1e-9)
      expect(lowShare).toBeLessThanOrEqual(correct / tasters)
      expect(highShare).toBeGreaterThanOrEqual(correct / tasters)
    }),
  )
})

test('right and wrong mirror each other', () => {
  const { lowShare, highShare } = clopperPearson({ tasters: 30, correct: 11, tailShare: 0.025 })
  const mirrored = clopperPearson({ tasters: 30, correct: 19, tailShare: 0.025 })
  expect(mirrored.lowShare).toBeCloseTo(1 - highShare, 13)
  expect(mirrored.highShare).toBeCloseTo(1 - lowShare, 13)
})

test('none and all have an end of the scale, and the other end in closed form', () => {
  expect(clopperPearson({ tasters: 20, correct: 0, tailShare: 0.05 })).toEqual({
    lowShare: 0,
    highShare: expect.closeTo(1 - 0.05 ** (1 / 20), 13),
  })
  expect(clopperPearson({ tasters: 20, correct: 20, tailShare: 0.05 })).toEqual({
    lowShare: expect.closeTo(0.05 ** (1 / 20), 13),
    highShare: 1,
  })
})

test('ten thousand tasters are answered; more, none and parts of one are refused', () => {
  expect(clopperPearson({ tasters: 10_000, correct: 1, tailShare: 0.025 }).lowShare).toBeCloseTo(2.5318e-6, 9)
  expect(() => clopperPearson({ tasters: 10_001, correct: 1, tailShare: 0.025 })).toThrow('tasters')
  expect(() => clopperPearson({ tasters: 0, correct: 0, tailShare: 0.025 })).toThrow('tasters')
  expect(() => clopperPearson({ tasters: 10, correct: 11, tailShare: 0.025 })).toThrow('correct')
  expect(() => clopperPearson({ tasters: 10, correct: 1.5, tailShare: 0.025 })).toThrow('not-whole')
  expect(() => clopperPearson({ tasters: 10, correct: 1, tailShare: NaN })).toThrow('not-finite')
})
