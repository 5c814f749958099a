import type { ReadyScale } from './types'
import { stepsToG, wholeSteps } from './whole-steps'

/**
 * Masses that can be read off: whole steps of the finest scale that carries them, rising. Where a scale has more marks in
 * the range than `mostPerScale`, so many of them are kept, spread by equal ratios, the first and the last among them.
 * @param scales from readyScales; leastG > 0, mostG g; mostPerScale whole, ≥ 2
 * Source: none; what a display shows.
 */
export function weighableMassesG(q: {
  scales: readonly ReadyScale[]
  leastG: number
  mostG: number
  mostPerScale: number
}): number[] {
  const masses: number[] = []
  let carriedG = 0
  for (const { resolutionG, capacityG } of q.scales) {
    const first = Math.max(1, wholeSteps(carriedG, resolutionG).steps + 1, stepsFrom(q.leastG, resolutionG))
    const last = wholeSteps(Math.min(q.mostG, capacityG), resolutionG).steps
    carriedG = capacityG
    for (const steps of spread(first, last, q.mostPerScale)) masses.push(stepsToG(steps, resolutionG))
  }
  return masses
}

function stepsFrom(leastG: number, resolutionG: number): number {
  const { steps, restSteps } = wholeSteps(leastG, resolutionG)
  return restSteps > 0 ? steps + 1 : steps
}

function spread(first: number, last: number, most: number): number[] {
  if (last < first) return []
  const count = last - first + 1
  if (count <= most) return Array.from({ length: count }, (_, i) => first + i)
  const ratio = last / first
  const steps = Array.from({ length: most }, (_, i) => Math.round(first * ratio ** (i / (most - 1))))
  return [...new Set(steps)]
}
