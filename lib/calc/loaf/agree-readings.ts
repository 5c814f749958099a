import { mustBeWithin, mustHaveAtLeast } from '../checks'
import { CalcError } from '../error'
import { summariseReadings } from './summarise-readings'

export type AgreedReading = {
  outcome: 'needs-another' | 'mean' | 'median'
  /** The figure to report; null while another reading is needed. */
  value: number | null
  range: number
  /** Range allowed for this number of readings. */
  criticalRange: number
}

/** Critical range factors f(n) at 95 %, times the repeatability standard deviation. ISO 5725-6:1994, table 1; from memory. */
const CRITICAL_FACTOR = { 2: 2.8, 3: 3.3 } as const

/**
 * Whether two readings of one loaf agree, and what to report when a third was needed.
 * Two within the repeatability limit r: their mean. Otherwise a third is read: the mean of three when their range is
 * within the critical range for three (3.3/2.8 of r), else the median, and the reader looks for the cause.
 * @param readings 1 to 3, in the order read
 * @param repeatabilityLimit r = 2.8 × repeatability standard deviation, from the bakery's own repeats, > 0
 * @throws CalcError 'empty' | 'not-finite' | 'out-of-range'; 'wrong-shape' for more than three
 * Source: ISO 5725-6:1994, 5.2.2, case where results are expensive; from memory.
 */
export function agreeReadings(q: { readings: readonly number[]; repeatabilityLimit: number }): AgreedReading {
  mustHaveAtLeast('readings', q.readings, 1)
  mustBeWithin('repeatabilityLimit', q.repeatabilityLimit, { over: 0 })
  if (q.readings.length > 3) throw new CalcError('wrong-shape', { field: 'readings', value: q.readings.length, max: 3 })
  const { n, mean, range } = summariseReadings(q.readings)
  if (n < 3) {
    const agrees = n === 2 && range <= q.repeatabilityLimit
    return {
      outcome: agrees ? 'mean' : 'needs-another',
      value: agrees ? mean : null,
      range,
      criticalRange: q.repeatabilityLimit,
    }
  }
  const criticalRange = (q.repeatabilityLimit * CRITICAL_FACTOR[3]) / CRITICAL_FACTOR[2]
  const median = [...q.readings].sort((a, b) => a - b)[1] ?? mean
  return range <= criticalRange
    ? { outcome: 'mean', value: mean, range, criticalRange }
    : { outcome: 'median', value: median, range, criticalRange }
}
