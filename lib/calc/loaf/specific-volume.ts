import { mustBeWithin } from '../checks'

/**
 * Specific volume of a loaf, mL/g: volume over mass, both of the cooled loaf.
 * @param volumeMl > 0
 * @param massG > 0
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: definition; AACC 10-05.01.
 * @example 1900 mL, 405.71 g: 4.683
 */
export function specificVolumeMlPerG(q: { volumeMl: number; massG: number }): number {
  return mustBeWithin('volumeMl', q.volumeMl, { over: 0 }) / mustBeWithin('massG', q.massG, { over: 0 })
}
