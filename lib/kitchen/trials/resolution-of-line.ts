import 'server-only'
import type { PlanScale } from './plan-types'

/** To what masses are written where no scale is known, g. */
export const resolutionWithoutScaleG = 0.1

/** The steps in which a line is weighed, g. */
export function resolutionOfLine(scale: PlanScale | null | undefined): number {
  return scale?.resolutionG ?? resolutionWithoutScaleG
}
