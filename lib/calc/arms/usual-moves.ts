import type { ArmLine, LineMove } from './types'

/** Locked unless the baker frees them: changing them changes the bread more than what is being asked about. */
const LOCKED: readonly ArmLine['kind'][] = ['flour', 'yeast', 'salt']

/**
 * The moves offered to start with: every line of the control but flour, yeast and salt, from nothing upwards.
 * Source: common practice, no source.
 */
export function usualMoves(control: readonly ArmLine[]): LineMove[] {
  return control
    .filter((line) => !line.isFlour && !LOCKED.includes(line.kind))
    .map((line) => ({ lineId: line.id, minG: 0, maxG: null }))
}
