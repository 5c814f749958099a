import { describe, expect, it } from 'vitest'
import { isDayOver, shiftMs } from '@/lib/kitchen/conduct/is-day-over'
import { whyNoDayAdded } from '@/lib/kitchen/conduct/why-no-day-added'
import { whyNotBakedAgain } from '@/lib/kitchen/conduct/why-not-baked-again'
import { whyNotExchanged } from '@/lib/kitchen/conduct/why-not-exchanged'

describe('a mixing day', () => {
  const over = (
    date: string | null,
    begun: string | null,
    now: string,
    clock = { timeZone: 'Europe/Berlin', dayTurnsAtH: 0 },
  ) => isDayOver({ date, lastBegunAt: begun === null ? null : new Date(begun), now: new Date(now), clock })

  it('of which nothing is begun goes by its date, in the zone of the bakery', () => {
    expect(over(null, null, '2026-03-02T04:00:00Z')).toBe(false)
    expect(over('2026-03-02', null, '2026-03-02T22:59:59Z')).toBe(false)
    expect(over('2026-03-02', null, '2026-03-02T23:00:00Z')).toBe(true)
    expect(over('2026-03-02', null, '2026-03-02T23:00:00Z', { timeZone: 'America/New_York', dayTurnsAtH: 0 })).toBe(
      false,
    )
    expect(over('2026-03-09', null, '2026-03-02T04:00:00Z')).toBe(false)
  })

  it('of which a dough is begun is when that was, whatever date was written', () => {
    expect(over('2026-03-09', '2026-03-02T04:00:00Z', '2026-03-04T04:00:00Z')).toBe(true)
    expect(over('2026-02-01', '2026-03-02T04:00:00Z', '2026-03-02T20:00:00Z')).toBe(false)
    expect(over(null, '2026-03-02T04:00:00Z', '2026-03-03T04:00:00Z')).toBe(true)
  })

  it('turns at the hour that the bakery has set: a night’s shift bakes on one day', () => {
    const atSix = { timeZone: 'Europe/Berlin', dayTurnsAtH: 6 }
    // Dated Monday, not begun: its doughs may be baked until Tuesday at six.
    expect(over('2026-03-02', null, '2026-03-03T04:59:59Z', atSix)).toBe(false)
    expect(over('2026-03-02', null, '2026-03-03T05:00:00Z', atSix)).toBe(true)
    // Begun on Tuesday at two it is Monday's, and Tuesday's of a bakery whose day turns at midnight.
    const begun = '2026-03-03T01:00:00Z'
    expect(over(null, begun, '2026-03-03T13:00:01Z', atSix)).toBe(true)
    expect(over(null, begun, '2026-03-03T13:00:01Z')).toBe(false)
    // No shift is cut in the middle by it.
    expect(over(null, '2026-03-03T04:30:00Z', '2026-03-03T05:30:00Z', atSix)).toBe(false)
  })

  it('goes on over midnight with the shift that began it', () => {
    const begun = '2026-03-02T20:30:00Z'
    const after = (ms: number) => new Date(Date.parse(begun) + ms).toISOString()
    expect(over('2026-03-02', begun, after(shiftMs))).toBe(false)
    expect(over('2026-03-02', begun, after(shiftMs + 1))).toBe(true)
    // Begun after midnight it is that day's until its end.
    expect(over('2026-03-02', '2026-03-02T23:30:00Z', '2026-03-03T22:59:59Z')).toBe(false)
  })
})

describe('a dough', () => {
  const ask = { state: 'lost', isBakedAgain: false, isDayOver: false, isDayAddedFor: false }

  it('is baked again when it is out, however it went out', () => {
    for (const state of ['lost', 'set_aside', 'not_baked']) expect(whyNotBakedAgain({ ...ask, state })).toBeNull()
    for (const state of ['waiting', 'weighing', 'in_work', 'baked', 'measured'])
      expect(whyNotBakedAgain({ ...ask, state })).toBe('not-out')
  })

  it('is baked again once, in its own day, and not beside a day that stands for it', () => {
    expect(whyNotBakedAgain({ ...ask, isBakedAgain: true })).toBe('baked-again-already')
    expect(whyNotBakedAgain({ ...ask, isDayOver: true })).toBe('mixing-day-over')
    expect(whyNotBakedAgain({ ...ask, isDayAddedFor: true, isDayOver: true })).toBe('day-added-for')
  })

  it('exchanges its place with another that waits on its day', () => {
    const dough = (id: string, dayNumber = 1, state = 'waiting') => ({ id, dayNumber, state })
    expect(whyNotExchanged(dough('a'), dough('b'))).toBeNull()
    expect(whyNotExchanged(dough('a'), dough('a'))).toBe('not-of-one-day')
    expect(whyNotExchanged(dough('a'), dough('b', 2))).toBe('not-of-one-day')
    for (const state of ['weighing', 'in_work', 'baked', 'measured', 'lost', 'set_aside', 'not_baked']) {
      expect(whyNotExchanged(dough('a'), dough('b', 1, state))).toBe('exchange-of-waiting')
      expect(whyNotExchanged(dough('a', 1, state), dough('b'))).toBe('exchange-of-waiting')
    }
  })
})

it('a whole day is added for one that is short, once', () => {
  expect(whyNoDayAdded({ short: 1, isAddedFor: false })).toBeNull()
  expect(whyNoDayAdded({ short: 0, isAddedFor: false })).toBe('day-whole')
  expect(whyNoDayAdded({ short: 2, isAddedFor: true })).toBe('day-added-for')
})
