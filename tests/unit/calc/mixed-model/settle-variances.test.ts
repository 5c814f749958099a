import { expect, test } from 'vitest'
import { designMatrix } from '@/lib/calc/mixed-model/design-matrix'
import { minimiseReml } from '@/lib/calc/mixed-model/minimise-reml'
import { settleVariances } from '@/lib/calc/mixed-model/settle-variances'
import type { MixedModel } from '@/lib/calc/mixed-model/types'
import { mixedTrial, productsOf } from '@/tests/support/mixed-trials'

const settle = (seed: string, batchSd: number, random: string[], change: (y: number) => number = (y) => y) => {
  const { rows, arms } = mixedTrial(seed, { arms: 3, blocks: 6, pieces: 4, batchSd, unbalanced: true })
  const model: MixedModel = { arms, fixed: ['level'], byArm: 'level', random }
  const own = rows.map((row) => ({ ...row, y: change(row.y) }))
  const named = random.map((name) => ({ name, levels: own.map((row) => row.factors[name]!) }))
  return {
    rows: own,
    model,
    got: settleVariances({ design: designMatrix({ rows: own, model }), y: own.map(({ y }) => y), random: named }),
  }
}

test('finds the minimum that the products of the whole y have', () => {
  const { rows, model, got } = settle('plain', 1, ['batch', 'block'])
  const whole = minimiseReml(productsOf({ rows, model }).cross)
  got.ratios.forEach((ratio, k) => expect(ratio).toBeCloseTo(whole.ratios[k]!, 7))
  const { n, p } = got.cross
  expect(got.remlValue + 2 * (n - p) * Math.log(got.unit)).toBeCloseTo(whole.criterion.value, 8)
})

test('batches that differ a hundred thousand times as much as their pieces cost no digits of the pieces', () => {
  for (const random of [['batch'], ['batch', 'block']]) {
    const { got } = settle('far', 1e5, random)
    const again = minimiseReml(got.cross, got.ratios)
    expect(again.settled).toBe(true)
    again.ratios.forEach((ratio, k) => expect(Math.abs(ratio - got.ratios[k]!)).toBeLessThanOrEqual(1e-4 * ratio))
    const residualSd = got.unit * Math.sqrt(again.criterion.moments.residual / (got.cross.n - got.cross.p))
    expect(residualSd).toBeGreaterThan(0.7)
    expect(residualSd).toBeLessThan(1.4)
  }
})

test('the fixed part already taken out holds a large common part', () => {
  const [one, two] = [settle('common', 1, ['batch']), settle('common', 1, ['batch'], (y) => y + 1e6)]
  expect(two.got.coefficients[0]! - one.got.coefficients[0]!).toBeCloseTo(1e6, 5)
  expect(two.got.ratios[0]).toBeCloseTo(one.got.ratios[0]!, 6)
})

test('values that the fixed part explains are refused', () => {
  expect(() => settle('flat', 1, ['batch'], () => 5)).toThrow('zero-variance')
})
