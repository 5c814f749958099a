import { expect, it } from 'vitest'
import { momentOf } from '@/lib/kitchen/moment-of'

/* Offsets and changes of the clock: the IANA time zone database, as ICU carries it. */
it('reads a day and a time in the bakery’s zone, summer and winter, east and west', () => {
  expect(momentOf('2026-01-15', '04:00', 'Europe/Berlin')).toBe('2026-01-15T03:00:00.000Z')
  expect(momentOf('2026-07-15', '4:00', 'Europe/Berlin')).toBe('2026-07-15T02:00:00.000Z')
  expect(momentOf('2026-07-15', '23:30', 'America/Los_Angeles')).toBe('2026-07-16T06:30:00.000Z')
  expect(momentOf('2026-07-15', '00:15', 'Pacific/Kiritimati')).toBe('2026-07-14T10:15:00.000Z')
  expect(momentOf('2026-07-15', '12:00', 'Asia/Kathmandu')).toBe('2026-07-15T06:15:00.000Z')
})

it('takes the first of an hour that comes twice, and refuses one that the clock skips', () => {
  expect(momentOf('2026-10-25', '02:30', 'Europe/Berlin')).toBe('2026-10-25T00:30:00.000Z')
  expect(momentOf('2026-03-29', '02:30', 'Europe/Berlin')).toBe('2026-03-29 02:30')
  expect(momentOf('2026-03-29', '03:00', 'Europe/Berlin')).toBe('2026-03-29T01:00:00.000Z')
})

it('gives back what is no day or time', () => {
  expect(momentOf('', '', 'UTC')).toBe(' ')
  expect(momentOf('2026-13-01', '04:00', 'UTC')).toBe('2026-13-01 04:00')
  expect(momentOf('2026-03-02', '25:00', 'UTC')).toBe('2026-03-02 25:00')
  expect(momentOf('2026-02-31', '04:00', 'UTC')).toBe('2026-02-31 04:00')
  expect(momentOf('2026-03-02', '24:00', 'UTC')).toBe('2026-03-02 24:00')
  expect(momentOf('2026-03-02', '4', 'UTC')).toBe('2026-03-02 4')
})
