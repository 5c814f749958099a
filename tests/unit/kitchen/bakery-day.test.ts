import fc from 'fast-check'
import { expect, it } from 'vitest'
import { bakeryDay } from '@/lib/kitchen/bakery-day'
import { dayInZone } from '@/lib/kitchen/day-in-zone'

const berlin = (dayTurnsAtH: number) => ({ timeZone: 'Europe/Berlin', dayTurnsAtH })

it('a night’s shift is one day’s work, that of the evening it began in', () => {
  const shift = ['2026-03-02T21:00:00Z', '2026-03-02T23:30:00Z', '2026-03-03T04:59:59Z']
  expect(shift.map((at) => bakeryDay(new Date(at), berlin(6)))).toEqual(['2026-03-02', '2026-03-02', '2026-03-02'])
  expect(bakeryDay(new Date('2026-03-03T05:00:00Z'), berlin(6))).toBe('2026-03-03')
  expect(shift.map((at) => bakeryDay(new Date(at), berlin(0)))).toEqual(['2026-03-02', '2026-03-03', '2026-03-03'])
})

it('goes by the clock on the wall in the nights that are an hour shorter or longer', () => {
  // 2026-03-29: from 02:00 to 03:00. 2026-10-25: from 03:00 back to 02:00.
  expect(bakeryDay(new Date('2026-03-29T00:59:59Z'), berlin(3))).toBe('2026-03-28')
  expect(bakeryDay(new Date('2026-03-29T01:00:00Z'), berlin(3))).toBe('2026-03-29')
  for (const at of ['2026-10-25T00:30:00Z', '2026-10-25T01:30:00Z'])
    expect(bakeryDay(new Date(at), berlin(3))).toBe('2026-10-24')
  expect(bakeryDay(new Date('2026-10-25T02:00:00Z'), berlin(3))).toBe('2026-10-25')
})

it('goes over the ends of months and years', () => {
  expect(bakeryDay(new Date('2028-03-01T02:00:00Z'), { timeZone: 'UTC', dayTurnsAtH: 4 })).toBe('2028-02-29')
  expect(bakeryDay(new Date('2027-01-01T02:00:00Z'), { timeZone: 'UTC', dayTurnsAtH: 4 })).toBe('2026-12-31')
})

it('is the calendar’s day or the one before, and the calendar’s where the day turns at midnight', () => {
  const moments = fc.date({ min: new Date('2020-01-01'), max: new Date('2035-01-01'), noInvalidDate: true })
  const zones = fc.constantFrom('UTC', 'Europe/Berlin', 'America/New_York', 'Asia/Kolkata', 'Pacific/Auckland')
  fc.assert(
    fc.property(moments, zones, fc.integer({ min: 0, max: 11 }), (at, timeZone, dayTurnsAtH) => {
      const day = bakeryDay(at, { timeZone, dayTurnsAtH })
      const calendar = dayInZone(at, timeZone)
      const apartMs = Date.parse(calendar) - Date.parse(day)
      expect([0, 86_400_000]).toContain(apartMs)
      expect(bakeryDay(at, { timeZone, dayTurnsAtH: 0 })).toBe(calendar)
      // What is done within the hours before it turns belongs to one day with the evening before.
      if (apartMs > 0) expect(dayInZone(new Date(at.getTime() - (dayTurnsAtH + 1) * 3_600_000), timeZone)).toBe(day)
    }),
  )
})
