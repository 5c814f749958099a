import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bakeryDay } from '@/lib/kitchen/bakery-day'
import { boundsOfDay } from '@/lib/kitchen/bounds-of-day'

const at = (text: string) => new Date(text)

describe('the day of work that a moment belongs to', () => {
  it.each([
    [
      'of a bakery that turns at midnight',
      '2026-03-02T03:00:00Z',
      'UTC',
      0,
      '2026-03-02T00:00:00Z',
      '2026-03-03T00:00:00Z',
    ],
    [
      'of one that turns at six, before it',
      '2026-03-02T03:00:00Z',
      'UTC',
      6,
      '2026-03-01T06:00:00Z',
      '2026-03-02T06:00:00Z',
    ],
    ['at the very turn', '2026-03-02T06:00:00Z', 'UTC', 6, '2026-03-02T06:00:00Z', '2026-03-03T06:00:00Z'],
    [
      'an hour short, when clocks go forward',
      '2026-03-29T10:00:00Z',
      'Europe/Berlin',
      0,
      '2026-03-28T23:00:00Z',
      '2026-03-29T22:00:00Z',
    ],
    [
      'an hour longer, when they go back',
      '2026-10-25T10:00:00Z',
      'Europe/Berlin',
      0,
      '2026-10-24T22:00:00Z',
      '2026-10-25T23:00:00Z',
    ],
  ])('%s', (_, moment, timeZone, dayTurnsAtH, beganAt, endsAt) => {
    expect(boundsOfDay(at(moment), { timeZone, dayTurnsAtH })).toEqual({ beganAt: at(beganAt), endsAt: at(endsAt) })
  })

  it('holds it, and its neighbours are of other days', () => {
    const moment = fc.date({ min: at('2026-01-01T00:00:00Z'), max: at('2027-01-01T00:00:00Z'), noInvalidDate: true })
    const clock = fc.record({
      timeZone: fc.constantFrom('UTC', 'Europe/Berlin', 'Asia/Kathmandu', 'America/New_York', 'Pacific/Auckland'),
      dayTurnsAtH: fc.integer({ min: 0, max: 11 }),
    })
    fc.assert(
      fc.property(moment, clock, (now, kept) => {
        const { beganAt, endsAt } = boundsOfDay(now, kept)
        const day = bakeryDay(now, kept)
        expect(beganAt.getTime()).toBeLessThanOrEqual(now.getTime())
        expect(endsAt.getTime()).toBeGreaterThan(now.getTime())
        expect(bakeryDay(beganAt, kept)).toBe(day)
        expect(bakeryDay(new Date(beganAt.getTime() - 1), kept)).not.toBe(day)
        expect(bakeryDay(new Date(endsAt.getTime() - 1), kept)).toBe(day)
        expect(bakeryDay(endsAt, kept)).not.toBe(day)
      }),
      { seed: 83 },
    )
  })
})
