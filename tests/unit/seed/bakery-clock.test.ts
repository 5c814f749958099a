import { describe, expect, test } from 'vitest'
import { bakeryClock } from '@/seed/bakery-clock'

// The bakery's zone is London's: an hour ahead of UTC from 29 March 2026 on.
describe('the invented bakery’s clock', () => {
  test.each([
    { now: '2026-03-02T00:05:00.000Z', daysAgo: 0, time: '04:10', is: '2026-03-02T04:10:00.000Z' },
    { now: '2026-03-02T00:05:00.000Z', daysAgo: 1, time: '13:00', is: '2026-03-01T13:00:00.000Z' },
    { now: '2026-04-09T22:55:00.000Z', daysAgo: 0, time: '04:10', is: '2026-04-09T03:10:00.000Z' },
    { now: '2026-04-09T23:05:00.000Z', daysAgo: 0, time: '04:10', is: '2026-04-10T03:10:00.000Z' },
    { now: '2026-04-09T22:55:00.000Z', daysAgo: 12, time: '04:10', is: '2026-03-28T04:10:00.000Z' },
    { now: '2026-04-09T22:55:00.000Z', daysAgo: 11, time: '04:10', is: '2026-03-29T03:10:00.000Z' },
    { now: '2026-01-01T10:00:00.000Z', daysAgo: 365, time: '12:00', is: '2025-01-01T12:00:00.000Z' },
  ])('at $now takes $time of $daysAgo days ago for $is', ({ now, daysAgo, time, is }) => {
    expect(bakeryClock(new Date(now)).on(daysAgo, time).toISOString()).toBe(is)
  })

  test('has no time that the spring night skips', () => {
    expect(() => bakeryClock(new Date('2026-03-30T10:00:00.000Z')).on(1, '01:30')).toThrow(
      'there is no 01:30 on 2026-03-29',
    )
  })
})
