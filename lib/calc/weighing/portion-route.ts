import { finestScale } from './finest-scale'
import type { DoseAim, MadePremix, ReadyScale, WeighingRoute } from './types'

/**
 * Takes the dose out of a premix (or weighs it straight from the product), with the error of all weighings.
 * @returns null when the premix is too little, no scale carries the portion, or it brings more carrier than the formula
 *   can give up; whether the error is small enough is for the caller to see
 * Source: law of propagation of uncertainty, JCGM 100:2008 (GUM), 5.1.2.
 */
export function portionRoute(aim: DoseAim, scales: readonly ReadyScale[], made: MadePremix): WeighingRoute | null {
  const portionG = aim.doseG / made.share
  const carrierInPortionG = portionG * (1 - made.share)
  const portion = finestScale(scales, portionG)
  if (portion === null || portionG > made.totalG * (1 + 1e-12) || carrierInPortionG > aim.mostCarrierG * (1 + 1e-12))
    return null
  const isDirect = made.steps.length === 0
  return {
    outcome: isDirect ? 'direct' : 'premix',
    steps: made.steps,
    portionG,
    portionScaleId: portion.scale.id,
    carrierInPortionG,
    errorShare: aim.coverageFactor * Math.sqrt(made.variance + portion.relative ** 2),
    premixMadeG: made.madeG,
    productLeftG: isDirect ? 0 : made.productG - aim.doseG,
  }
}
