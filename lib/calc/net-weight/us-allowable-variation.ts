import { mustBeWithin } from '../checks'
import type { NetWeightCaution } from './types'

const ABOVE_G = 317
/** Upper end of the range of labelled weight and the variation there, g. NIST Handbook 133, table 2-5: from memory. */
const TABLE = [
  [381, 16.3],
  [426, 18.1],
  [489, 19.9],
  [571, 21.7],
  [635, 23.5],
  [698, 25.4],
  [771, 27.2],
  [852, 29.0],
  [970, 31.7],
] as const

/**
 * How far below its labelled weight a single package may be in the United States (maximum allowable variation). The mean
 * of a lot must still be no less than the label.
 * @param labelledG g, above 317 to 970: the part of the table that loaves need
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: NIST Handbook 133, table 2-5, from memory: check the handbook in force before relying on it.
 * @example 453.59 g (1 lb): 19.9 g
 */
export function usAllowableVariationG(q: { labelledG: number }): { variationG: number; cautions: NetWeightCaution[] } {
  const labelledG = mustBeWithin('labelledG', q.labelledG, { over: ABOVE_G, max: TABLE[TABLE.length - 1]![0] })
  const [, variationG] = TABLE.find(([upToG]) => labelledG <= upToG)!
  return { variationG, cautions: ['from-memory-check-handbook', 'competent-person-checks'] }
}
