import { expect, test } from 'vitest'
import { samplePackages } from '@/lib/calc/net-weight/sample-packages'
import { sampledPackages } from '@/lib/calc/net-weight/sampled-packages'

test('from 100 packages on it is the sample of the plan', () => {
  for (const batchPackages of [100, 500, 501, 10_000])
    for (const isDestructive of [false, true])
      expect(sampledPackages({ batchPackages, isDestructive })).toBe(samplePackages({ batchPackages, isDestructive }))
})

test('below 100 there is no sample', () => {
  expect(() => sampledPackages({ batchPackages: 99, isDestructive: false })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ reason: 'all-are-weighed' }) }),
  )
  expect(() => sampledPackages({ batchPackages: 99, isDestructive: true })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ reason: 'too-few-to-destroy' }) }),
  )
})
