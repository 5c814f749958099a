import { mustBeWithin } from '../checks'
import { netWeightUncertaintyG } from './net-weight-uncertainty'

/**
 * Least net mass that a scale weighs within a stated relative error: m = k · u / e.
 * @param errorShare relative error allowed, 0 < e < 1
 * @param coverageFactor k at which that error is stated, > 0
 * @returns g, not rounded
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: the inverse of relativeDoseErrorShare; JCGM 100:2008 (GUM), 6.2.1.
 * @example 1 % at k = 2 on a 0.1 g scale that repeats perfectly: 8.16 g
 */
export function leastNetMassG(q: {
  errorShare: number
  coverageFactor: number
  resolutionG: number
  repeatabilityG: number
}): number {
  mustBeWithin('errorShare', q.errorShare, { over: 0, under: 1 })
  mustBeWithin('coverageFactor', q.coverageFactor, { over: 0 })
  return (q.coverageFactor * netWeightUncertaintyG(q)) / q.errorShare
}
