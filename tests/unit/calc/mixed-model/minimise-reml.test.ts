import fc from 'fast-check'
import { expect, test } from 'vitest'
import { minimiseReml } from '@/lib/calc/mixed-model/minimise-reml'
import { remlCriterion } from '@/lib/calc/mixed-model/reml-criterion'
import { mixedTrial, productsOf } from '@/tests/support/mixed-trials'

test('no criterion nearby is lower; the score is zero inside, and above zero where a ratio is at zero', () => {
  const random = fc.constantFrom(['batch'], ['batch', 'block'], ['block', 'level'])
  const sd = fc.constantFrom(0, 0.3, 1, 30)
  let atZero = 0
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 1e6 }), random, sd, sd, (seed, names, batchSd, blockSd) => {
      const { rows, arms } = mixedTrial(String(seed), {
        arms: 3,
        blocks: 5,
        pieces: 3,
        batchSd,
        blockSd,
        unbalanced: true,
      })
      const { cross } = productsOf({ rows, model: { arms, random: names } })
      const { ratios, criterion } = minimiseReml(cross)
      ratios.forEach((value, k) => {
        if (value === 0) {
          atZero++
          expect(criterion.gradient[k]!).toBeGreaterThan(-1e-9)
        } else expect(Math.abs(criterion.gradient[k]! * value)).toBeLessThan(1e-8)
        for (const factor of [0.5, 0.99, 1.01, 2]) {
          const other = ratios.map((own, l) => (l === k ? Math.max(own, 0.01) * factor : own))
          expect(remlCriterion(cross, other).value).toBeGreaterThan(criterion.value - 1e-9)
        }
      })
    }),
    { numRuns: 150 },
  )
  expect(atZero).toBeGreaterThan(10)
})

test('a batch variance far above and far below that of pieces is found', () => {
  for (const batchSd of [1e-2, 1e4]) {
    const { rows, arms } = mixedTrial('far', { arms: 2, blocks: 20, pieces: 4, batchSd })
    const { cross } = productsOf({ rows, model: { arms, random: ['batch'] } })
    const { ratios, criterion } = minimiseReml(cross)
    expect(ratios[0] === 0 || Math.abs(criterion.gradient[0]! * ratios[0]!) < 1e-6).toBe(true)
    if (batchSd > 1) expect(Math.sqrt(ratios[0]!) / batchSd).toBeGreaterThan(0.5)
  }
})

test('pieces of a batch that are all alike leave no residual', () => {
  const { rows, arms } = mixedTrial('alike', { arms: 2, blocks: 5, pieces: 3, batchSd: 1 })
  const first = new Map(rows.map((row) => [row.factors.batch, row.y]))
  const alike = rows.map((row) => ({ ...row, y: first.get(row.factors.batch)! }))
  expect(() => minimiseReml(productsOf({ rows: alike, model: { arms, random: ['batch'] } }).cross)).toThrow(
    'zero-variance',
  )
})
