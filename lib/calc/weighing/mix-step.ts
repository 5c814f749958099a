import { finestScale } from './finest-scale'
import type { MadePremix, ReadyScale } from './types'

/** The product itself, before any premix: as much of it as is wanted. */
export const PURE: MadePremix = { steps: [], share: 1, variance: 0, totalG: Infinity, productG: 0, madeG: 0 }

/**
 * Mixes some of a premix (or of the product) into carrier. With w = take/(take + carrier) the relative variance grows by
 * (1 − w)²·((u_take/take)² + (u_carrier/carrier)²). The premix counts as evenly mixed; that is the mixer's part.
 * @param takeG, carrierG > 0
 * @returns null when no scale carries one of them
 * Source: law of propagation of uncertainty, JCGM 100:2008 (GUM), 5.1.2.
 */
export function mixStep(
  scales: readonly ReadyScale[],
  before: MadePremix,
  takeG: number,
  carrierG: number,
): MadePremix | null {
  const take = finestScale(scales, takeG)
  const carrier = finestScale(scales, carrierG)
  if (take === null || carrier === null) return null
  const totalG = takeG + carrierG
  const part = takeG / totalG
  const share = before.share * part
  return {
    steps: [
      ...before.steps,
      { takeG, takeScaleId: take.scale.id, carrierG, carrierScaleId: carrier.scale.id, totalG, productShare: share },
    ],
    share,
    variance: before.variance + (1 - part) ** 2 * (take.relative ** 2 + carrier.relative ** 2),
    totalG,
    productG: before.steps.length === 0 ? takeG : before.productG,
    madeG: before.madeG + totalG,
  }
}
