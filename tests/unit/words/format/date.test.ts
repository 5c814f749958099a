import { describe, expect, it } from 'vitest'
import { formatDate, formatDateTime } from '@/lib/words/format/date'

/*
 * Zones by the IANA time zone database: Auckland is 13 h ahead of UTC in January and 12 h in July, Berlin 1 h and 2 h.
 * The tests themselves run under TZ=Europe/Berlin, so a forgotten zone shows in the Auckland ones.
 */
const lateUtc = new Date('2026-01-14T23:30:00Z')

describe('formatDate', () => {
  it('gives the day of the bakery, not of the server', () => {
    expect(formatDate(lateUtc, { locale: 'en-GB', timeZone: 'Europe/Berlin' })).toBe('15 Jan 2026')
    expect(formatDate(lateUtc, { locale: 'en-GB', timeZone: 'UTC' })).toBe('14 Jan 2026')
    expect(formatDate(new Date('2026-01-14T11:30:00Z'), { locale: 'en-GB', timeZone: 'Pacific/Auckland' })).toBe(
      '15 Jan 2026',
    )
  })

  it('writes the day in the language asked for', () => {
    expect(formatDate(lateUtc, { locale: 'de-DE', timeZone: 'UTC' })).toBe('14.01.2026')
  })
})

describe('formatDateTime', () => {
  it('follows summer time in two zones', () => {
    const july = new Date('2026-07-14T22:30:00Z')
    expect(formatDateTime(lateUtc, { locale: 'en-GB', timeZone: 'Europe/Berlin' })).toBe('15 Jan 2026, 00:30')
    expect(formatDateTime(lateUtc, { locale: 'en-GB', timeZone: 'Pacific/Auckland' })).toBe('15 Jan 2026, 12:30')
    expect(formatDateTime(july, { locale: 'en-GB', timeZone: 'Europe/Berlin' })).toBe('15 Jul 2026, 00:30')
    expect(formatDateTime(july, { locale: 'en-GB', timeZone: 'Pacific/Auckland' })).toBe('15 Jul 2026, 10:30')
  })

  it('walks over the night when Berlin leaves summer time, 25 October 2026 at 01:00 UTC', () => {
    const berlin = { locale: 'en-GB', timeZone: 'Europe/Berlin' }
    expect(formatDateTime(new Date('2026-10-25T00:59:00Z'), berlin)).toBe('25 Oct 2026, 02:59')
    expect(formatDateTime(new Date('2026-10-25T01:00:00Z'), berlin)).toBe('25 Oct 2026, 02:00')
  })

  it('refuses a date that is none and a zone that is none', () => {
    expect(() => formatDateTime(new Date('never'), { locale: 'en-GB', timeZone: 'UTC' })).toThrow(RangeError)
    expect(() => formatDate(lateUtc, { locale: 'en-GB', timeZone: 'Europe/Nowhere' })).toThrow(RangeError)
  })
})
