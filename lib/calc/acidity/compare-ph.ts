import { mustBeWithin } from '../checks'

/**
 * What a difference of pH means: how many times more hydrogen ions. pH is a logarithm, so it has no percentages, and a
 * mean of pH readings is not the pH of a mixture.
 * @param controlPh, armPh 0 to 14, at one temperature
 * @returns arm less control, and ions of the arm over those of the control: 10^(control − arm)
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: definition of pH.
 * @example 4.3 against 4.6: 1.995 times
 */
export function comparePh(q: { controlPh: number; armPh: number }): { differencePh: number; timesAsAcid: number } {
  mustBeWithin('controlPh', q.controlPh, { min: 0, max: 14 })
  mustBeWithin('armPh', q.armPh, { min: 0, max: 14 })
  return { differencePh: q.armPh - q.controlPh, timesAsAcid: 10 ** (q.controlPh - q.armPh) }
}
