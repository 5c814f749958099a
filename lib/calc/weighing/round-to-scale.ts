import { mustBeWithin } from '../checks'
import { stepsToG } from './whole-steps'

/**
 * The reading nearest to a mass on a scale; a half goes up. For one line alone: lines that must keep a total go
 * through roundToResolutions.
 * @param massG g, ≥ 0
 * @param resolutionG smallest step shown, g, > 0
 * @throws CalcError 'not-finite' | 'out-of-range'
 * @example 12.34 g on a 0.5 g scale: 12.5
 */
export function roundToScaleG(q: { massG: number; resolutionG: number }): number {
  mustBeWithin('massG', q.massG, { min: 0 })
  mustBeWithin('resolutionG', q.resolutionG, { over: 0 })
  return stepsToG(Math.round(Number((q.massG / q.resolutionG).toPrecision(14))), q.resolutionG)
}
