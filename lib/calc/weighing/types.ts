/**
 * A scale as its owner knows it. `repeatabilityG` is the standard deviation of repeated readings of one load;
 * `capacityG` the most it may carry.
 */
export type Scale = { id: string; resolutionG: number; repeatabilityG: number; capacityG: number }

/** A scale with the standard uncertainty of a net weight on it. Sorted by that, each carries more than those before. */
export type ReadyScale = { id: string; resolutionG: number; capacityG: number; uncertaintyG: number }

/** One mixing step: `takeG` of what the step before made (of the product itself in the first) into `carrierG`. */
export type PremixStep = {
  takeG: number
  takeScaleId: string
  carrierG: number
  carrierScaleId: string
  totalG: number
  /** Product in the premix. */
  productShare: number
}

/** A premix made up: its steps, the product in it, and the relative variance of that so far. */
export type MadePremix = {
  steps: PremixStep[]
  share: number
  variance: number
  totalG: number
  /** Product weighed in the first step. */
  productG: number
  /** Premix made up, over all steps. */
  madeG: number
}

export type WeighingRoute = {
  outcome: 'direct' | 'premix'
  steps: PremixStep[]
  /** What goes into the dough, not rounded: the dose itself, or that mass of the last premix. */
  portionG: number
  portionScaleId: string
  /** Carrier that comes with it and is taken off the formula's flour or water. */
  carrierInPortionG: number
  /** Of the dose, at the coverage factor asked for. */
  errorShare: number
  /** Premix made up, over all steps. */
  premixMadeG: number
  /** Product that is weighed and not used. */
  productLeftG: number
}

export type PremixPlan = WeighingRoute | { outcome: 'not-possible'; bestErrorShare: number | null }

/** What a dose must keep to. */
export type DoseAim = {
  doseG: number
  errorShare: number
  coverageFactor: number
  mostCarrierG: number
  mostPremixG: number
}
