import { expect, test } from 'vitest'
import { satterthwaiteDf } from '@/lib/calc/mixed-model/satterthwaite-df'

test('a variance made of one mean square alone has its degrees of freedom', () => {
  // a mean of n values: covariance σ²/n, slope 1/n, and 2σ⁴/ν for the variance of the variance
  const [n, df] = [12, 11]
  expect(
    satterthwaiteDf({ weights: [1], covariance: [[1 / n]], first: [[[n]]], varianceCovariance: [[2 / df]] }),
  ).toBeCloseTo(df, 12)
})

test('two independent groups give the degrees of freedom of Welch’s test', () => {
  // group sizes 4 and 9, variances 5 and 2: Satterthwaite (1946), Biometrics Bulletin 2, ν = (Σ vᵢ)² / Σ (vᵢ² / νᵢ)
  const [a, b] = [5 / 4, 2 / 9]
  const df = satterthwaiteDf({
    weights: [-1, 1],
    covariance: [
      [a, 0],
      [0, b],
    ],
    first: [
      [
        [4 / 25, 0],
        [0, 0],
      ],
      [
        [0, 0],
        [0, 9 / 4],
      ],
    ],
    varianceCovariance: [
      [(2 * 25) / 3, 0],
      [0, (2 * 4) / 8],
    ],
  })
  expect(df).toBeCloseTo((a + b) ** 2 / (a ** 2 / 3 + b ** 2 / 8), 12)
})
