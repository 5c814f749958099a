import { mustBeWithin } from '../checks'
import { netWeightUncertaintyG } from './net-weight-uncertainty'

/**
 * Relative error of a weighed dose: k · u / m.
 * @param netMassG mass weighed, g, > 0
 * @param coverageFactor k: 1 for one standard deviation, 2 for about 95 %, > 0
 * @returns share of the dose, not a percentage
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: JCGM 100:2008 (GUM), 6.2.1.
 * @example 2 g on a 1 g scale, k = 2: 0.408, i.e. ± 41 %
 */
export function relativeDoseErrorShare(q: {
  netMassG: number
  resolutionG: number
  repeatabilityG: number
  coverageFactor: number
}): number {
  mustBeWithin('netMassG', q.netMassG, { over: 0 })
  mustBeWithin('coverageFactor', q.coverageFactor, { over: 0 })
  return (q.coverageFactor * netWeightUncertaintyG(q)) / q.netMassG
}
