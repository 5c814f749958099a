import { expect, test } from 'vitest'
import { usSamplingPlan } from '@/lib/calc/net-weight/us-sampling-plan'

test('a larger lot is weighed by no smaller sample, and its mean may be short by fewer spreads', () => {
  const plans = [12, 250, 251, 3200, 3201, 1e6].map((lotPackages) => usSamplingPlan({ lotPackages }))
  for (const [i, plan] of plans.entries()) {
    expect(plan.samplePackages).toBeGreaterThanOrEqual(plans[Math.max(0, i - 1)]!.samplePackages)
    expect(plan.factor).toBeLessThanOrEqual(plans[Math.max(0, i - 1)]!.factor)
    expect(plan.cautions).toContain('from-memory-check-handbook')
  }
})

test('a small lot is refused in words, half a package as no number', () => {
  expect(() => usSamplingPlan({ lotPackages: 11 })).toThrow(
    expect.objectContaining({
      facts: expect.objectContaining({ field: 'lotPackages', min: 12, reason: 'small-lot-not-stored' }),
    }),
  )
  expect(() => usSamplingPlan({ lotPackages: 12.5 })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ reason: 'not-whole' }) }),
  )
})
