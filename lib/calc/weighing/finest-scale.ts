import type { ReadyScale } from './types'

/**
 * The scale with the least uncertainty that can carry a mass, and the relative standard uncertainty of the mass on it;
 * null when none can carry it.
 * @param scales from readyScales; massG > 0
 * Source: JCGM 100:2008 (GUM), 5.1.6 (relative standard uncertainty).
 */
export function finestScale(
  scales: readonly ReadyScale[],
  massG: number,
): { scale: ReadyScale; relative: number } | null {
  const scale = scales.find((one) => one.capacityG >= massG)
  return scale === undefined ? null : { scale, relative: scale.uncertaintyG / massG }
}
