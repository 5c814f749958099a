import 'server-only'
import type { ShownCosts } from './shown-result'

/** Evidence from before a dough had one cost a loaf went by good loaves, where they were counted for every arm that has a sum. */
export function isByGoodLoaf(costs: ShownCosts): boolean {
  return costs.arms.every(({ perGoodPiece, perPlannedPiece }) => perGoodPiece !== null || perPlannedPiece === null)
}
