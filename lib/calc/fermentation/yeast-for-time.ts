import { mustBeWithin } from '../checks'

/** Beyond these the constant is known to fail: yeast grows, sugar runs out, acid and gluten set the time. */
const LONGEST_MIN = 240
const MOST_TIMES = 2

/**
 * Yeast for another fermentation time at one temperature: yeast × time stays the same. A rule for short doughs; it fails
 * for long times, and then the answer says so.
 * @param yeastPctFlour over 0 to 20; @param atMin, wantedMin over 0 to 2880 min, to the same state of the same dough
 * @returns % on flour, and 'long-time' beyond four hours or beyond twice or half of the time
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: common practice, no source; the bounds of the warning are ours.
 * @example 1.2 % for 90 min: 0.72 % for 150 min
 */
export function yeastForTime(q: { yeastPctFlour: number; atMin: number; wantedMin: number }): {
  yeastPctFlour: number
  warnings: 'long-time'[]
} {
  mustBeWithin('yeastPctFlour', q.yeastPctFlour, { over: 0, max: 20 })
  mustBeWithin('atMin', q.atMin, { over: 0, max: 2880 })
  mustBeWithin('wantedMin', q.wantedMin, { over: 0, max: 2880 })
  const times = q.wantedMin / q.atMin
  const isLong = Math.max(q.atMin, q.wantedMin) > LONGEST_MIN || times > MOST_TIMES || times < 1 / MOST_TIMES
  return { yeastPctFlour: q.yeastPctFlour / times, warnings: isLong ? ['long-time'] : [] }
}
