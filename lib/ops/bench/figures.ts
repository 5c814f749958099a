import { median } from '../../calc/median'

/** One pair of times taken one right after the other, ms. */
export type TimedPair = { subjectMs: number; referenceMs: number }

/**
 * How many times as long as the reference the subject takes. Both medians come from the same rounds, so that what
 * else the machine did falls on both.
 * @param pairs at least one
 * @throws Error when there is none, or a time is not above zero
 */
export function ratioOf(pairs: readonly TimedPair[]): { subjectMs: number; referenceMs: number; ratio: number } {
  const subjectMs = median(pairs.map((pair) => pair.subjectMs))
  const referenceMs = median(pairs.map((pair) => pair.referenceMs))
  if (!pairs.every((pair) => pair.subjectMs > 0 && pair.referenceMs > 0))
    throw new Error('a time that is not above zero was not measured')
  return { subjectMs, referenceMs, ratio: subjectMs / referenceMs }
}

/** The word beside a figure that has a greatest value. */
export function within(value: number, most: number): 'within' | 'beyond' {
  return value <= most ? 'within' : 'beyond'
}

/** The value that so many of them are at or below. */
export function atShare(times: readonly number[], share: number): number {
  return times.toSorted((a, b) => a - b)[Math.ceil(share * times.length) - 1] ?? 0
}
