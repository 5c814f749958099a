import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dayBegan } from '@/lib/station/outbox/day-began'
import { emptyGaugeToday } from '@/lib/station/outbox/empty-gauge-today'
import { loafVolume } from '@/lib/station/outbox/loaf-volume'
import { readTyped } from '@/lib/station/outbox/typed-digits'

const hour = 3_600_000
/** Six in the morning by the book, when the day turns. */
const six = Date.UTC(2026, 2, 1, 6)
const floor = (aheadMs = 0) => ({
  value: {
    now: new Date(six + hour).toISOString(),
    day: { beganAt: new Date(six).toISOString(), endsAt: new Date(six + 24 * hour).toISOString() },
  },
  at: six + hour - aheadMs,
})

describe('the volume of a loaf in seed', () => {
  it.each([
    ['1150', '150', { outcome: 'volume', volume: '1000' }],
    ['1150.5', '150', { outcome: 'volume', volume: '1000.5' }],
    ['1000.3', '0.1', { outcome: 'volume', volume: '1000.2' }],
    ['2400', '0', { outcome: 'volume', volume: '2400' }],
    ['3000', '0', { outcome: 'volume', volume: '3000' }],
    ['3000.1', '0', { outcome: 'too-large' }],
    ['150', '150', { outcome: 'not-more' }],
    ['15', '150', { outcome: 'not-more' }],
    ['0', '0', { outcome: 'not-more' }],
  ])('with it %s and without it %s', (withLoaf, without, expected) => {
    expect(loafVolume({ withLoaf, without, mostMl: 3000 })).toEqual(expected)
  })

  it('is a number that a pad could have been typed to, and is just what the loaf adds', () => {
    const tenths = fc.nat(99_999_999)
    fc.assert(
      fc.property(tenths, tenths, fc.constantFrom(1, 10, 100), (a, b, by) => {
        const of = loafVolume({ withLoaf: String(a / by), without: String(b / by), mostMl: Infinity })
        expect(of.outcome).toBe(a > b ? 'volume' : 'not-more')
        if (of.outcome !== 'volume') return
        expect(readTyped(of.volume)).toBe(of.volume)
        expect(Math.round(Number(of.volume) * by)).toBe(a - b)
      }),
      { seed: 91, numRuns: 500 },
    )
  })
})

describe('what a gauge shows without a loaf', () => {
  const kept = { value: '150', at: six + hour, who: 'Esi' }
  it.each([
    ['in the same hour', kept, six + 2 * hour, true],
    ['until the day turns', kept, six + 24 * hour - 1, true],
    ['no longer once it has turned, without a network too', kept, six + 24 * hour, false],
    ['not of the day before', { ...kept, at: six - 1 }, six + hour, false],
    ['of a day that the tablet began without the book', { ...kept, at: six + 25 * hour }, six + 30 * hour, true],
    ['no longer on the day after that', { ...kept, at: six + 25 * hour }, six + 48 * hour, false],
  ])('stands %s', (_, empty, now, stands) => {
    expect(emptyGaugeToday(empty, floor(), now)).toEqual(stands ? empty : null)
  })

  it('is none where nobody has read it', () => {
    expect(emptyGaugeToday(null, floor(), six + hour)).toBeNull()
  })
})

it('a day begins by the book’s clock, however wrong the tablet’s is, and never after now', () => {
  fc.assert(
    fc.property(fc.integer({ min: -48, max: 48 }), fc.integer({ min: 0, max: 500 }), (aheadH, sinceH) => {
      const now = six + sinceH * hour - aheadH * hour
      const began = dayBegan(floor(aheadH * hour), now)
      expect(began).toBeLessThanOrEqual(now)
      expect(now - began).toBeLessThan(24 * hour)
      expect((began + aheadH * hour - six) % (24 * hour)).toBe(0)
    }),
    { seed: 92 },
  )
})
