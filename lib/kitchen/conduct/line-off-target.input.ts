export type LineFound = 'on-target' | 'off' | 'left-out'

/** Sums and products of decimals are off by less, and no scale shows so little. */
const dustShare = 1e-9

/**
 * How what was weighed of a line stands to its target. What was ticked is as planned; of a line that has a target and
 * of which nothing went in, it is left out, whatever may be off.
 * @param massG where it was weighed, ≥ 0; null otherwise
 * @param toleranceG most that it may be off; null for what takes as much as it takes
 */
export function lineOffTarget(q: {
  how: 'ticked' | 'weighed' | 'left_out'
  massG: number | null
  targetG: number
  toleranceG: number | null
}): LineFound {
  const { how, targetG, toleranceG } = q
  if (how === 'ticked') return 'on-target'
  const massG = how === 'left_out' ? 0 : (q.massG ?? 0)
  if (massG === 0 && targetG > 0) return 'left-out'
  if (toleranceG === null) return 'on-target'
  const dustG = dustShare * Math.max(1, massG, targetG)
  return Math.abs(massG - targetG) > toleranceG + dustG ? 'off' : 'on-target'
}
