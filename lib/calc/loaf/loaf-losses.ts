import { mustBeWithin } from '../checks'

export type LoafLosses = {
  /** Dough scaled to loaf out of the oven, as a share of the dough scaled. */
  bakeLossShare: number
  /** Out of the oven to cooled, as a share of the dough scaled, so that the two add up. */
  coolingLossShare: number
  totalLossShare: number
  /** The same total as a share of the cooled loaf: 10 % of dough is 11.1 % of bread. */
  totalOnBreadShare: number
}

/**
 * Bake and cooling loss of a loaf or of several together. Both bases are given, because sources mix them up.
 * @param doughMassG dough scaled, g, > 0
 * @param hotMassG out of the oven, g, > 0, not above the dough
 * @param cooledMassG g, > 0, not above the hot mass
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: definition; the two bases after Gisslen, Professional Baking, where '50 to 65 g a 500 g loaf' is 9 to 11.5 % of dough.
 * @example 900 g dough, 800 g hot, 790 g cooled: 11.1 %, 1.1 %, 12.2 % of dough
 */
export function loafLosses(q: { doughMassG: number; hotMassG: number; cooledMassG: number }): LoafLosses {
  mustBeWithin('doughMassG', q.doughMassG, { over: 0 })
  mustBeWithin('hotMassG', q.hotMassG, { over: 0, max: q.doughMassG })
  mustBeWithin('cooledMassG', q.cooledMassG, { over: 0, max: q.hotMassG })
  return {
    bakeLossShare: (q.doughMassG - q.hotMassG) / q.doughMassG,
    coolingLossShare: (q.hotMassG - q.cooledMassG) / q.doughMassG,
    totalLossShare: (q.doughMassG - q.cooledMassG) / q.doughMassG,
    totalOnBreadShare: (q.doughMassG - q.cooledMassG) / q.cooledMassG,
  }
}
