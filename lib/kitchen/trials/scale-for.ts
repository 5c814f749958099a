import 'server-only'
import { netWeightUncertaintyG } from '../../calc/weighing/net-weight-uncertainty'
import { relativeDoseErrorShare } from '../../calc/weighing/relative-dose-error'
import type { PlanScale } from './plan-types'

/** The scale that was chosen for a trial stays while it is no further off than this, at k = 2. Common practice, no source. */
export const preferredErrorShare = 0.01

/**
 * The scale for one line: the preferred one where it weighs the mass within 1 %, otherwise the finest that can.
 * A scale can weigh a mass from its least load to the most that it carries. Where none can, it is the finest that
 * carries the mass, or the largest there is; the plan warns of both.
 * @param massG what stands on the scale, g, ≥ 0
 * @param tellG the part of it that must be told apart: a dose within a larger line, g, 0 to massG
 * @returns null only where there are no scales
 */
export function scaleFor(q: {
  scales: readonly PlanScale[]
  preferredId: string | null
  massG: number
  tellG: number
}): PlanScale | null {
  const { massG, tellG } = q
  const preferred = q.scales.find(({ id }) => id === q.preferredId) ?? null
  const finestFirst = [...q.scales].sort(
    (a, b) => uncertaintyG(a) - uncertaintyG(b) || b.mostG - a.mostG || (a.id < b.id ? -1 : 1),
  )
  const [finest = null] = finestFirst
  if (!(massG > 0)) return preferred ?? finest
  const carrying = finestFirst.filter(({ mostG }) => mostG >= massG)
  const able = carrying.filter(({ leastG }) => (leastG ?? 0) <= massG)
  const isNearEnough =
    preferred !== null &&
    able.includes(preferred) &&
    tellG > 0 &&
    relativeDoseErrorShare({ netMassG: tellG, ...spreadOf(preferred), coverageFactor: 2 }) <= preferredErrorShare
  if (isNearEnough) return preferred
  return able[0] ?? carrying[0] ?? [...finestFirst].sort((a, b) => b.mostG - a.mostG)[0] ?? null
}

/** Marks and repeats of a scale, as the calculations take them; one whose repeats nobody measured has none. */
export function spreadOf({ resolutionG, repeatabilityG }: PlanScale): { resolutionG: number; repeatabilityG: number } {
  return { resolutionG, repeatabilityG: repeatabilityG ?? 0 }
}

function uncertaintyG(scale: PlanScale): number {
  return netWeightUncertaintyG(spreadOf(scale))
}
