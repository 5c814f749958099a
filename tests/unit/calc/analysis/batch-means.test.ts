import { expect, test } from 'vitest'
import { batchMeans } from '@/lib/calc/analysis/batch-means'

test('repeat readings count within their loaf, loaves count once each', () => {
  const of = (loaf: string, value: number) => ({ arm: 'a', block: '1', batch: 'x', loaf, value })
  const [batch] = batchMeans([of('1', 10), of('1', 12), of('1', 14), of('2', 20)])
  expect(batch).toEqual({ arm: 'a', block: '1', batch: 'x', mean: 16, loafCount: 2, loafSumSquares: 32 })
})

test('a batch in two arms or two blocks, and nothing at all, are refused', () => {
  const row = { arm: 'a', block: '1', batch: 'x', loaf: '1', value: 1 }
  expect(() => batchMeans([row, { ...row, arm: 'b' }])).toThrow('batch-in-two-arms')
  expect(() => batchMeans([row, { ...row, block: '2' }])).toThrow('batch-in-two-blocks')
  expect(() => batchMeans([])).toThrow('empty')
  expect(() => batchMeans([{ ...row, value: NaN }])).toThrow('not-finite')
})
