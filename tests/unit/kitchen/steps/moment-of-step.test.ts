import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { momentOfStep } from '@/lib/kitchen/steps/moment-of-step.input'

const hour = 3_600_000
const noon = Date.UTC(2026, 2, 1, 12)
const said = { takenAt: noon, clockAheadS: 0, agoS: 0, receivedAt: noon + 1000, begunAt: noon - 4 * hour }

describe('when a step was', () => {
  it.each([
    ['as the device says', {}, 0],
    ['before that, by as much as somebody said', { agoS: 600 }, -600_000],
    ['put right where the device is known to be an hour behind', { takenAt: noon - hour, clockAheadS: 3600 }, 0],
    ['put right where it is a year ahead', { takenAt: noon + 8760 * hour, clockAheadS: -31_536_000 }, 0],
    [
      'no later than it came in, of a clock that nobody knew to be ahead',
      { takenAt: noon + hour, clockAheadS: null },
      1000,
    ],
    ['no earlier than its dough was begun', { takenAt: noon - 9 * hour }, -4 * hour],
    [
      'as it was, of a dough of which nobody said when it was begun',
      { takenAt: noon - 9 * hour, begunAt: null },
      -9 * hour,
    ],
    ['of entries that waited on the tablet all shift, as it was', { receivedAt: noon + 10 * hour }, 0],
  ])('is %s', (_, more, expected) => {
    expect(momentOfStep({ ...said, ...more }) - noon).toBe(expected)
  })

  it('is never after it came in, and never before its dough was begun', () => {
    const ms = fc.integer({ min: 0, max: 4_102_444_800_000 })
    fc.assert(
      fc.property(
        ms,
        fc.option(fc.integer({ min: -2e9, max: 2e9 })),
        fc.integer({ min: 0, max: 86_400 }),
        ms,
        fc.nat({ max: 864e5 }),
        (takenAt, clockAheadS, agoS, receivedAt, age) => {
          const begunAt = receivedAt - age
          const at = momentOfStep({ takenAt, clockAheadS, agoS, receivedAt, begunAt })
          expect(at).toBeLessThanOrEqual(receivedAt)
          expect(at).toBeGreaterThanOrEqual(begunAt)
        },
      ),
      { seed: 76 },
    )
  })
})
