import 'server-only'
import type { ShownCosts } from './shown-result'

/** By good loaves only when they were counted for every arm that has a sum, so that arms are set side by side alike. */
export function isByGoodLoaf(costs: ShownCosts): boolean {
  return costs.arms.every(({ perGoodPiece, perPlannedPiece }) => perGoodPiece !== null || perPlannedPiece === null)
}
