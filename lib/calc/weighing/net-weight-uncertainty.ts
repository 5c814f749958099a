import { mustBeWithin } from '../checks'

/**
 * Standard uncertainty of a net weight. A net weight is a difference of two readings (empty or tared, and full), and
 * each reading carries a rectangular distribution of full width one resolution (standard deviation d/√12) and the
 * scale's repeatability: u = √(2 · (d²/12 + s²)).
 * Calibration, buoyancy and draught are not in it: they are shared by all arms on one scale.
 * @param resolutionG smallest step shown, d, g, > 0
 * @param repeatabilityG standard deviation of repeated readings, s, g, ≥ 0
 * @returns g, one standard deviation
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: JCGM 100:2008 (GUM), 4.3.7 and F.2.2.1 (resolution of a digital indication, u = 0.29 δx).
 * @example resolution 1 g, perfect repeatability: 0.408 g
 */
export function netWeightUncertaintyG(q: { resolutionG: number; repeatabilityG: number }): number {
  mustBeWithin('resolutionG', q.resolutionG, { over: 0 })
  mustBeWithin('repeatabilityG', q.repeatabilityG, { min: 0 })
  return Math.sqrt(2 * (q.resolutionG ** 2 / 12 + q.repeatabilityG ** 2))
}
