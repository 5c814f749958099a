import { expect, test } from 'vitest'
import { leastRankDifference } from '@/lib/calc/panel/least-rank-difference'

test('it grows with the root of the tasters', () => {
  const [few, many] = [6, 24].map((tasters) => leastRankDifference({ tasters, samples: 4, alpha: 0.05 }))
  expect(many! / few!).toBeCloseTo(2, 13)
})

test('one taster, one sample and a level in per cent are refused', () => {
  expect(() => leastRankDifference({ tasters: 1, samples: 4, alpha: 0.05 })).toThrow('tasters')
  expect(() => leastRankDifference({ tasters: 8, samples: 1, alpha: 0.05 })).toThrow('samples')
  expect(() => leastRankDifference({ tasters: 8, samples: 4, alpha: 5 })).toThrow('alpha')
})
