import { expect, it } from 'vitest'
import { dayInZone } from '@/lib/kitchen/day-in-zone'

it('a moment falls on the day that the bakery’s own clock shows', () => {
  const lateEvening = new Date('2026-03-01T23:30:00Z')
  expect(dayInZone(lateEvening, 'Europe/London')).toBe('2026-03-01')
  expect(dayInZone(lateEvening, 'Europe/Berlin')).toBe('2026-03-02')
  expect(dayInZone(lateEvening, 'America/New_York')).toBe('2026-03-01')
})

it('the day changes at midnight by summer time where it holds', () => {
  // Summer time begins on 29 March 2026: midnight in Berlin is 22:00 UTC from then on.
  expect(dayInZone(new Date('2026-03-30T21:59:59Z'), 'Europe/Berlin')).toBe('2026-03-30')
  expect(dayInZone(new Date('2026-03-30T22:00:00Z'), 'Europe/Berlin')).toBe('2026-03-31')
})
