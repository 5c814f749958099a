import type { ArmLine, LineMove } from './types'

/** Locked unless the baker frees them: changing them changes the bread more than what is being asked about. Fruit, seeds and grains are 'other'. */
const LOCKED: readonly ArmLine['kind'][] = ['flour', 'yeast', 'salt', 'improver', 'other']

/**
 * The moves offered to start with: every water, fat, sugar, dairy and egg of the control, from nothing upwards.
 * Source: common practice, no source.
 */
export function usualMoves(control: readonly ArmLine[]): LineMove[] {
  return control
    .filter((line) => !line.isFlour && !LOCKED.includes(line.kind))
    .map((line) => ({ lineId: line.id, minG: 0, maxG: null }))
}
