import { expect, test } from 'vitest'
import { pageDistribution } from '@/lib/calc/panel/page-distribution'

/** All rankings of k samples. */
function rankings(k: number): number[][] {
  if (k === 0) return [[]]
  return rankings(k - 1).flatMap((rest) =>
    Array.from({ length: k }, (_, place) => [...rest.slice(0, place), k, ...rest.slice(place)]),
  )
}

const sumOf = (ranks: readonly number[]) => ranks.reduce((sum, rank, j) => sum + (j + 1) * rank, 0)

test('it counts the rankings: one taster and three, every value', () => {
  const one = rankings(4).map(sumOf)
  for (let statistic = 20; statistic <= 30; statistic++) {
    const share = one.filter((sum) => sum >= statistic).length / 24
    expect(pageDistribution({ tasters: 1, samples: 4, statistic })).toBeCloseTo(share, 14)
  }
  const three = rankings(3).map(sumOf)
  const sums = three.flatMap((a) => three.flatMap((b) => three.map((c) => a + b + c)))
  for (let statistic = 30; statistic <= 42; statistic++) {
    const share = sums.filter((sum) => sum >= statistic).length / 216
    expect(pageDistribution({ tasters: 3, samples: 3, statistic })).toBeCloseTo(share, 14)
  }
})

test('full agreement is one ranking in all, to the last digit', () => {
  // 5! = 120, and 55 is Σ j²
  expect(pageDistribution({ tasters: 12, samples: 5, statistic: 12 * 55 }) / 120 ** -12).toBeCloseTo(1, 11)
})

test('ten samples are counted; what cannot be is refused', () => {
  expect(pageDistribution({ tasters: 1, samples: 10, statistic: 385 }) * 3_628_800).toBeCloseTo(1, 10)
  expect(() => pageDistribution({ tasters: 1, samples: 11, statistic: 400 })).toThrow('samples')
  expect(() => pageDistribution({ tasters: 1, samples: 3, statistic: 15 })).toThrow('statistic')
  expect(() => pageDistribution({ tasters: 2, samples: 3, statistic: 24.5 })).toThrow('not-whole')
})
