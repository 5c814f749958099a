import { expect, test } from 'vitest'
import { acceptancePlan } from '@/lib/calc/net-weight/acceptance-plan'

test('a larger batch is weighed by no smaller sample, and the last sample always decides', () => {
  for (const batchPackages of [100, 500, 501, 3200, 3201, 10_000]) {
    for (const isDestructive of [false, true]) {
      const stages = acceptancePlan({ batchPackages, isDestructive })
      const last = stages[stages.length - 1]!
      expect(last.rejectAt).toBe(last.acceptAt + 1)
    }
  }
})

test('of fewer than 100 every package is weighed, so there are no numbers', () =>
  expect(() => acceptancePlan({ batchPackages: 99, isDestructive: false })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ reason: 'all-are-weighed' }) }),
  ))
