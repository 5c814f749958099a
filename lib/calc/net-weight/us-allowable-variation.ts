import { mustBeWithin } from '../checks'
import type { NetWeightCaution } from './types'

const LB_G = 453.59237

/** Upper end of the range of labelled weight, lb, and the variation there, g. NIST Handbook 133, table 2-5. */
const TABLE = [
  [0.12, 3.6],
  [0.18, 5.4],
  [0.26, 7.2],
  [0.34, 9.0],
  [0.46, 10.8],
  [0.58, 12.7],
  [0.7, 14.5],
  [0.84, 16.3],
  [0.94, 18.1],
  [1.08, 19.9],
  [1.26, 21.7],
  [1.4, 23.5],
  [1.54, 25.4],
  [1.7, 27.2],
  [1.88, 29.0],
  [2.14, 31.7],
  [2.48, 35.3],
  [2.76, 39.0],
  [3.2, 42.6],
  [3.9, 49],
  [4.7, 54],
  [5.8, 63],
] as const

/** Labels below this weight, lb, may be short by a tenth of it. */
const TENTH_BELOW_LB = 0.08

/**
 * How far below its labelled weight a single package may be in the United States (maximum allowable variation). The mean
 * of a lot must still be no less than the label.
 * @param labelledG g, above 0 to 2630.8 (5.8 lb); the ranges of the table are in pounds
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: NIST Handbook 133, table 2-5. From memory but for the rows of 113 g and 907 g, which chapter 2 (2026) prints:
 *   check the handbook in force before relying on it.
 * @example 453.59 g (1 lb): 19.9 g
 */
export function usAllowableVariationG(q: { labelledG: number }): { variationG: number; cautions: NetWeightCaution[] } {
  const labelledG = mustBeWithin('labelledG', q.labelledG, { over: 0, max: LB_G * TABLE[TABLE.length - 1]![0] })
  const cautions: NetWeightCaution[] = ['from-memory-check-handbook', 'competent-person-checks']
  if (labelledG < TENTH_BELOW_LB * LB_G) return { variationG: labelledG / 10, cautions }
  const [, variationG] = TABLE.find(([upToLb]) => labelledG <= upToLb * LB_G)!
  return { variationG, cautions }
}
