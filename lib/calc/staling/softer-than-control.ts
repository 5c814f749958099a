import { mustBeWithin } from '../checks'

/**
 * How much softer than the control, in % of the control; below nought it is firmer. The other way round, how much firmer
 * the control is in % of the test dough, is another number, so it has another name.
 * @param controlFirmness, armFirmness means in one unit, > 0, of crumb of one age; without their spread nothing is proven
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: definition.
 * @example 3179 against 1708 mN: 46.27 % softer
 */
export function softerThanControl(q: { controlFirmness: number; armFirmness: number }): {
  softerPct: number
  controlFirmerPct: number
} {
  const control = mustBeWithin('controlFirmness', q.controlFirmness, { over: 0 })
  const arm = mustBeWithin('armFirmness', q.armFirmness, { over: 0 })
  return { softerPct: 100 * (1 - arm / control), controlFirmerPct: 100 * (control / arm - 1) }
}
