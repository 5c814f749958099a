import type { MadePremix } from './types'

/**
 * Of many premixes, those that a search may go on from: in each range of strength the one with the least error and the
 * largest.
 * @param most how many are kept, even, ≥ 2; fewer are handed back as they are
 * Source: none; a bounded search.
 */
export function thinPremixes(made: readonly MadePremix[], most: number): MadePremix[] {
  if (made.length <= most) return [...made]
  const byShare = [...made].sort((a, b) => a.share - b.share)
  const ranges = most / 2
  const kept = new Set<MadePremix>()
  for (let range = 0; range < ranges; range++) {
    const group = byShare.slice(
      Math.floor((range * byShare.length) / ranges),
      Math.floor(((range + 1) * byShare.length) / ranges),
    )
    kept.add(group.reduce((a, b) => (b.variance < a.variance ? b : a)))
    kept.add(group.reduce((a, b) => (b.totalG > a.totalG ? b : a)))
  }
  return [...kept]
}
