import fc from 'fast-check'
import { expect, test } from 'vitest'
import { acceptBatchMean } from '@/lib/calc/net-weight/accept-batch-mean'

test('a batch at nominal is accepted when its packages differ, and one far below is not', () => {
  const contentsG = [495, 505, 498, 502, 500, 497, 503, 499, 501, 500]
  expect(acceptBatchMean({ nominalG: 500, contentsG }).isAccepted).toBe(true)
  expect(acceptBatchMean({ nominalG: 500, contentsG: contentsG.map((g) => g - 5) }).isAccepted).toBe(false)
})

test('it shifts with the contents and scales with them', () =>
  fc.assert(
    fc.property(fc.array(fc.double({ min: 480, max: 520, noNaN: true }), { minLength: 2, maxLength: 60 }), (contentsG) => {
      const one = acceptBatchMean({ nominalG: 500, contentsG })
      const twice = acceptBatchMean({ nominalG: 1000, contentsG: contentsG.map((g) => 2 * g) })
      expect(twice.meanG).toBeCloseTo(2 * one.meanG, 8)
      expect(twice.leastMeanG).toBeCloseTo(2 * one.leastMeanG, 8)
    }),
  ))

test('the other half of the test is spoken of, and one package is too few', () => {
  expect(acceptBatchMean({ nominalG: 500, contentsG: [500, 501] }).cautions).toContain('other-half-of-the-test')
  expect(() => acceptBatchMean({ nominalG: 500, contentsG: [500] })).toThrow(expect.objectContaining({ code: 'empty' }))
})

test('an empty package among twenty is refused although the mean would pass', () =>
  expect(acceptBatchMean({ nominalG: 500, contentsG: [...new Array<number>(19).fill(505), 0] })).toMatchObject({
    isMeanAccepted: true,
    belowLower: 1,
    belowAbsolute: 1,
    isAccepted: false,
    cautions: expect.arrayContaining(['light-package-not-for-sale']),
  }))
