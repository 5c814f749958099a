import { mustBeWithin, mustHaveAtLeast } from '../checks'

export type ReadingSummary = {
  n: number
  mean: number
  /** Standard deviation with divisor n − 1; null for a single reading. */
  sd: number | null
  /** Largest less smallest. */
  range: number
  /** sd / mean as a percentage; null for a single reading or a mean of zero. */
  cvPct: number | null
}

/**
 * Mean and spread of repeat readings of one loaf. The spread belongs to the reading and not to the loaves.
 * @param readings n ≥ 1, any unit
 * @throws CalcError 'empty' | 'not-finite'
 * Source: definition; updating mean and squares in one pass, B. P. Welford, Technometrics 4, 1962.
 */
export function summariseReadings(readings: readonly number[]): ReadingSummary {
  mustHaveAtLeast('readings', readings, 1)
  let mean = 0
  let squares = 0
  let least = Infinity
  let most = -Infinity
  readings.forEach((reading, i) => {
    mustBeWithin(`readings[${i}]`, reading)
    const before = reading - mean
    mean += before / (i + 1)
    squares += before * (reading - mean)
    least = Math.min(least, reading)
    most = Math.max(most, reading)
  })
  const n = readings.length
  const sd = n < 2 ? null : Math.sqrt(squares / (n - 1))
  return { n, mean, sd, range: most - least, cvPct: sd === null || mean === 0 ? null : (100 * sd) / Math.abs(mean) }
}
