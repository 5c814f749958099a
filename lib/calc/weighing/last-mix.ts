import { carrierRangeG } from './carrier-range'
import { finestScale } from './finest-scale'
import { mixStep } from './mix-step'
import { portionRoute } from './portion-route'
import type { DoseAim, MadePremix, ReadyScale, WeighingRoute } from './types'
import { stepsToG, wholeSteps } from './whole-steps'

/**
 * The least premix of one more step that brings the dose within its error: every take that is offered, and for each the
 * least carrier on any mark of any scale, found from the error's own equation and not by trying.
 * @param takesG rising, from weighableMassesG
 * @returns null when no such premix does it
 * Source: carrierRangeG.
 */
export function lastMix(
  aim: DoseAim,
  scales: readonly ReadyScale[],
  before: MadePremix,
  takesG: readonly number[],
): WeighingRoute | null {
  const allowed = (aim.errorShare / aim.coverageFactor) ** 2
  const doseOfBeforeG = aim.doseG / before.share
  let best: WeighingRoute | null = null
  for (const takeG of takesG) {
    if (best !== null && before.madeG + takeG >= best.premixMadeG) break
    const take = finestScale(scales, takeG)
    if (take === null || takeG < doseOfBeforeG * (1 - 1e-12) || takeG > before.totalG * (1 + 1e-12)) continue
    const timesG = takeG / doseOfBeforeG
    const mostG = Math.min(aim.mostPremixG - takeG, timesG * (aim.mostCarrierG + aim.doseG) - takeG)
    for (const [c, carrier] of scales.entries()) {
      for (const [p, portion] of scales.entries()) {
        const range = carrierRangeG({
          takeG,
          takeVariance: take.relative ** 2,
          fixed: carrier.uncertaintyG ** 2 + (portion.uncertaintyG * timesG) ** 2,
          leftVariance: allowed - before.variance,
        })
        if (range === null) continue
        const lowG = Math.max(
          range.fromG,
          scales[c - 1]?.capacityG ?? 0,
          timesG * (scales[p - 1]?.capacityG ?? 0) - takeG,
        )
        const highG = Math.min(range.toG, carrier.capacityG, timesG * portion.capacityG - takeG, mostG)
        for (const carrierG of firstMarks(lowG, highG, carrier.resolutionG)) {
          const made = mixStep(scales, before, takeG, carrierG)
          const route = made === null ? null : portionRoute(aim, scales, made)
          if (route === null || route.errorShare > aim.errorShare) continue
          if (best === null || isBetter(route, best)) best = route
          break
        }
      }
    }
  }
  return best
}

/** The first two marks: the range is open where a finer scale ends, and its ends are rounded. */
function firstMarks(lowG: number, highG: number, resolutionG: number): number[] {
  if (highG < lowG * (1 - 1e-9)) return []
  const first = Math.max(1, wholeSteps(Math.max(0, lowG), resolutionG).steps)
  return [first, first + 1].map((steps) => stepsToG(steps, resolutionG)).filter((massG) => massG <= highG * (1 + 1e-12))
}

function isBetter(a: WeighingRoute, b: WeighingRoute): boolean {
  const moreG = a.premixMadeG - b.premixMadeG
  return Math.abs(moreG) > 1e-9 ? moreG < 0 : a.errorShare < b.errorShare
}
