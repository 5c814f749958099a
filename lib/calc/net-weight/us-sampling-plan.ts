import { mustBeWhole } from '../checks'
import { CalcError } from '../error'
import { tQuantile } from '../distributions/t-quantile'
import type { NetWeightCaution } from './types'

/** Largest lot of a row, packages weighed, and how many of them may be short beyond the allowed variation. */
const ROWS = [
  { upToPackages: 250, samplePackages: 12, shortAllowed: 0 },
  { upToPackages: 3200, samplePackages: 24, shortAllowed: 0 },
  { upToPackages: Infinity, samplePackages: 48, shortAllowed: 1 },
] as const

const LEAST_LOT = 12
const CONFIDENCE = 0.975

export type UsSamplingPlan = {
  samplePackages: number
  /** Sample error limit in spreads of the sample: t₀.₉₇₅(n − 1)/√n. */
  factor: number
  shortAllowed: number
  cautions: NetWeightCaution[]
}

/**
 * Packages to weigh of a lot in the United States (category A), the factor for its mean, and how many of the sample may be
 * short beyond the allowed variation. The handbook prints the factor to three decimals: 0.635, 0.422, 0.291.
 * @param lotPackages whole, 12 to 1,000,000; the rows of smaller lots are not stored
 * @throws CalcError 'not-finite' | 'out-of-range'; 'not-possible' with reason 'small-lot-not-stored' below 12
 * Source: rules of NIST Handbook 133 (2026), chapter 2; sizes and counts of its table 2-1 from memory: check the handbook in
 *   force. The factor is worked.
 * @example 200 packages: 12 of them, 0.63537, none
 */
export function usSamplingPlan(q: { lotPackages: number }): UsSamplingPlan {
  const lot = mustBeWhole('lotPackages', q.lotPackages, { min: 1, max: 1e6 })
  if (lot < LEAST_LOT)
    throw new CalcError('not-possible', {
      field: 'lotPackages',
      value: lot,
      min: LEAST_LOT,
      reason: 'small-lot-not-stored',
    })
  const { samplePackages, shortAllowed } = ROWS.find(({ upToPackages }) => lot <= upToPackages)!
  return {
    samplePackages,
    factor: tQuantile({ p: CONFIDENCE, df: samplePackages - 1, tail: 'lower' }) / Math.sqrt(samplePackages),
    shortAllowed,
    cautions: ['from-memory-check-handbook', 'competent-person-checks'],
  }
}
