import { expect, test } from 'vitest'
import { dunnettTail } from '@/lib/calc/distributions/dunnett-tail'
import { noncentralTTail } from '@/lib/calc/distributions/noncentral-t-tail'
import { tTail } from '@/lib/calc/distributions/t-tail'

test('one arm is plain t, whatever its loading', () => {
  for (const df of [1, 2.5, 12, 400]) {
    for (const c of [0.1, 2, 9]) {
      const t = tTail({ t: c, df, tail: 'upper' })
      expect(dunnettTail({ c, df, loadings: [0.6], sides: 'one' }).upper / t).toBeCloseTo(1, 9)
      expect(dunnettTail({ c, df, loadings: [0.95], sides: 'two' }).upper / (2 * t)).toBeCloseTo(1, 9)
    }
  }
})

test('two arms without correlation and nearly known spread are independent', () => {
  const inside = 1 - 2 * tTail({ t: 2, df: 1e6, tail: 'upper' })
  expect(dunnettTail({ c: 2, df: 1e6, loadings: [0, 0], sides: 'two' }).lower).toBeCloseTo(inside * inside, 6)
})

test('equal correlation ½ and one side at 0: the control is the greatest of k + 1 alike, 1 / (k + 1)', () => {
  for (const k of [1, 2, 5]) {
    const loadings = new Array<number>(k).fill(Math.SQRT1_2)
    expect(dunnettTail({ c: 0, df: 7, loadings, sides: 'one' }).lower).toBeCloseTo(1 / (k + 1), 12)
  }
})

test('the sides add up to one, and the tail lies between the largest part and the sum of parts', () => {
  const loadings = [0.9, 0.3, 0.75, 0.75]
  for (const c of [0.5, 2, 4, 12]) {
    const { lower, upper } = dunnettTail({ c, df: 6, loadings, sides: 'two' })
    const single = 2 * tTail({ t: c, df: 6, tail: 'upper' })
    expect(lower + upper).toBeCloseTo(1, 12)
    expect(upper).toBeGreaterThan(single)
    expect(upper).toBeLessThan(4 * single)
  }
})

test('negative loadings turn the arm round', () => {
  const two = (loadings: number[]) => dunnettTail({ c: 2, df: 9, loadings, sides: 'two' }).upper
  expect(two([0.7, -0.5])).toBe(two([0.7, 0.5]))
  const one = (loadings: number[]) => dunnettTail({ c: 2, df: 9, loadings, sides: 'one' }).upper
  expect(one([0.7, -0.5])).toBeGreaterThan(one([0.7, 0.5]))
})

test('one shifted arm is the noncentral t, and several lie between the largest part and the sum of parts', () => {
  const part = (noncentrality: number) =>
    noncentralTTail({ t: 2.4, df: 8, noncentrality, tail: 'upper' }) +
    noncentralTTail({ t: -2.4, df: 8, noncentrality, tail: 'lower' })
  const tail = (loadings: number[], noncentralities: number[]) =>
    dunnettTail({ c: 2.4, df: 8, loadings, noncentralities, sides: 'two' }).upper
  for (const shift of [-6, 0.5, 3]) expect(tail([0.7], [shift]) / part(shift)).toBeCloseTo(1, 10)
  const three = tail([0.7, 0.6, 0.8], [2, -1, 0])
  expect(three).toBeGreaterThan(part(2))
  expect(three).toBeLessThan(part(2) + part(-1) + part(0))
})

test('turned round with its shift, an arm says the same for two sides', () => {
  const q = { c: 2, df: 9, sides: 'two' } as const
  const got = dunnettTail({ ...q, loadings: [0.7, -0.5], noncentralities: [1, 2] }).upper
  expect(got).toBeCloseTo(dunnettTail({ ...q, loadings: [0.7, 0.5], noncentralities: [1, -2] }).upper, 13)
  expect(Math.abs(got - dunnettTail({ ...q, loadings: [0.7, 0.5], noncentralities: [1, 2] }).upper)).toBeGreaterThan(
    0.001,
  )
})

test('no arm, shifts of another length, and loadings of 1, are refused', () => {
  expect(() => dunnettTail({ c: 2, df: 9, loadings: [], sides: 'two' })).toThrow('empty')
  expect(() => dunnettTail({ c: 2, df: 9, loadings: [1], sides: 'two' })).toThrow('out-of-range')
  expect(() => dunnettTail({ c: 2, df: 9, loadings: [0.5], noncentralities: [1, 2], sides: 'two' })).toThrow(
    'wrong-shape',
  )
  expect(() => dunnettTail({ c: 2, df: 9, loadings: [0.5], noncentralities: [NaN], sides: 'two' })).toThrow(
    'not-finite',
  )
})
