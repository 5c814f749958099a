import fc from 'fast-check'
import { expect, it } from 'vitest'
import { oddDays, shiftMs } from '@/lib/kitchen/conduct/odd-days'

const begin = new Date('2026-03-02T04:00:00Z')
const dough = (day: number, afterMs: number | null) => ({
  day,
  begunAt: afterMs === null ? null : new Date(begin.getTime() + afterMs),
})
const night = 24 * 60 * 60_000

it('days of which each has its own morning are as they should be, in whatever order the days come', () => {
  expect(oddDays([])).toEqual([])
  expect(oddDays([dough(1, 0), dough(1, shiftMs), dough(2, null)])).toEqual([])
  expect(oddDays([dough(2, 0), dough(2, 1), dough(1, night), dough(1, night + 1)])).toEqual([])
  expect(oddDays([dough(1, 0), dough(2, shiftMs)])).toEqual([])
})

it('a day that is spread over more than a shift is told, and so are two days within one', () => {
  expect(oddDays([dough(1, 0), dough(1, shiftMs + 1)])).toEqual([{ kind: 'spread', day: 1 }])
  expect(oddDays([dough(2, 0), dough(1, shiftMs - 1)])).toEqual([{ kind: 'together', day: 1, other: 2 }])
  expect(oddDays([dough(3, 0), dough(3, 2 * night), dough(1, night), dough(2, night + 1)])).toEqual([
    { kind: 'spread', day: 3 },
    { kind: 'together', day: 1, other: 2 },
  ])
})

it('a dough that was never begun changes nothing, nor does the order in which doughs are told', () => {
  const doughs = fc.array(
    fc.record({ day: fc.integer({ min: 1, max: 4 }), hours: fc.option(fc.integer({ min: 0, max: 90 })) }),
  )
  fc.assert(
    fc.property(doughs, (drawn) => {
      const told = drawn.map(({ day, hours }) => dough(day, hours === null ? null : hours * 60 * 60_000))
      expect(oddDays([...told].reverse())).toEqual(oddDays(told.filter(({ begunAt }) => begunAt !== null)))
    }),
  )
})
