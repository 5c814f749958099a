import { mustBeWithin } from '../checks'
import { summariseReadings } from './summarise-readings'

export type GaugeCalibration = {
  /** Mean reading of the block less its volume: the offset to take off later readings, mL. */
  offsetMl: number
  /** Block volume over mean reading, for a gauge whose error grows with the loaf. */
  factor: number
  /** Of a single reading, n − 1; null from one reading. */
  repeatabilityMl: number | null
  /** Standard uncertainty of the offset: spread of the mean and of the block. */
  offsetUncertaintyMl: number | null
}

/**
 * Calibrates a volume gauge with a block of known volume. One block cannot tell an offset from a factor: use a block near
 * the loaves' volume, and two blocks to tell.
 * @param readingsMl repeated readings of the block, n ≥ 1, mL, > 0
 * @param blockVolumeMl known volume, mL, > 0; blockUncertaintyMl its standard uncertainty, mL, ≥ 0
 * @throws CalcError 'empty' | 'not-finite' | 'out-of-range'
 * Source: JCGM 100:2008 (GUM), 4.2.3 (mean of repeated readings) and 5.1.2; use of a standard block: AACC 10-05.01.
 */
export function calibrateGauge(q: {
  readingsMl: readonly number[]
  blockVolumeMl: number
  blockUncertaintyMl: number
}): GaugeCalibration {
  q.readingsMl.forEach((reading, i) => mustBeWithin(`readingsMl[${i}]`, reading, { over: 0 }))
  mustBeWithin('blockVolumeMl', q.blockVolumeMl, { over: 0 })
  mustBeWithin('blockUncertaintyMl', q.blockUncertaintyMl, { min: 0 })
  const { n, mean, sd } = summariseReadings(q.readingsMl)
  return {
    offsetMl: mean - q.blockVolumeMl,
    factor: q.blockVolumeMl / mean,
    repeatabilityMl: sd,
    offsetUncertaintyMl: sd === null ? null : Math.sqrt(sd ** 2 / n + q.blockUncertaintyMl ** 2),
  }
}
