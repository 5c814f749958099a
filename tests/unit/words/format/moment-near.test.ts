import { expect, it } from 'vitest'
import { momentNear } from '@/lib/words/format/moment-near'

const berlin = { locale: 'en-GB', timeZone: 'Europe/Berlin' }

it('is the time alone on the same day of the bakery, and has the day with it on another', () => {
  const morning = new Date('2026-03-02T04:00:00Z')
  expect(momentNear(new Date('2026-03-02T22:59:00Z'), morning, berlin)).toBe('23:59')
  expect(momentNear(new Date('2026-03-02T23:00:00Z'), morning, berlin)).toBe('Tue 3 Mar, 00:00')
  expect(momentNear(new Date('2026-03-01T22:59:00Z'), morning, berlin)).toBe('Sun 1 Mar, 23:59')
})
