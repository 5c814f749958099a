import { expect, test } from 'vitest'
import { samplePackages } from '@/lib/calc/net-weight/sample-packages'

test.each([
  [1, 1],
  [99, 99],
  [100, 30],
  [500, 30],
  [501, 50],
  [10_000, 50],
])('of a batch of %i, %i are checked', (batchPackages, sample) =>
  expect(samplePackages({ batchPackages, isDestructive: false })).toBe(sample),
)

test('a small batch is not destroyed, half a package is none', () => {
  expect(() => samplePackages({ batchPackages: 99, isDestructive: true })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ reason: 'too-few-to-destroy' }) }),
  )
  expect(() => samplePackages({ batchPackages: 100.5, isDestructive: false })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ reason: 'not-whole' }) }),
  )
  expect(() => samplePackages({ batchPackages: 10_001, isDestructive: false })).toThrow(
    expect.objectContaining({ code: 'out-of-range' }),
  )
})
