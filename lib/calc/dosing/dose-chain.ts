import { mustBeWithin } from '../checks'
import { CalcError } from '../error'
import { atFlatFields } from '../flat-fields'
import { finestScale } from '../weighing/finest-scale'
import { planPremix } from '../weighing/plan-premix'
import { readyScales } from '../weighing/ready-scales'
import { roundToScaleG } from '../weighing/round-to-scale'
import type { DoseAim, ReadyScale, Scale, WeighingRoute } from '../weighing/types'
import { activeMassG } from './active-mass'
import { productMassG } from './product-mass'

export type ChainWeighing = {
  /** Premix that it is for, from 1; the portion has the number of the last. */
  step: number
  what: 'take' | 'carrier' | 'portion'
  scaleId: string
  massG: number
  /** What the display should show. */
  readingG: number
  /** Of this weighing alone, at the coverage factor. */
  errorShare: number
  /** Of the product in what has been made so far, this weighing included. */
  soFarErrorShare: number
}

export type DoseChain = {
  activeMg: number
  productMg: number
  outcome: 'direct' | 'premix' | 'not-possible'
  weighings: ChainWeighing[]
  /** Of the product in the dough, from weighing alone; the least that round masses reach where it is not possible. */
  weighingErrorShare: number | null
  /** With what is not known of the strength. */
  activeErrorShare: number | null
  carrierInPortionG: number | null
  premixMadeG: number | null
  productLeftG: number | null
  warnings: 'more-than-a-tenth-of-flour'[]
}

/**
 * The whole way of a small dose: ppm on flour → mg of active substance → mg of product → premix → masses to weigh, with
 * the relative error at each weighing and carried through. Uneven mixing is not in it.
 * @param doseMgPerKgFlour ppm, over 0 to 1,000,000, which is as much as the flour; flourMassG > 0; activeShare, strengthShare 0 < s ≤ 1
 * @param strengthErrorShare relative error of activeShare · strengthShare at the same coverage factor, 0 ≤ e < 1
 * @param errorShare, coverageFactor, scales, mostCarrierG, mostPremixG as planPremix; errorShare is of weighing alone
 * @returns 'more-than-a-tenth-of-flour' when so much product is wanted: that is a flour for a flour, or a slip of units
 * @throws CalcError 'empty' | 'duplicate' | 'not-finite' | 'out-of-range'; 'not-possible' with reason 'more-than-flour'
 *   when the product would outweigh the flour
 * Source: mass balance; law of propagation of uncertainty, JCGM 100:2008 (GUM), 5.1.2 and 5.1.6.
 */
export function doseChain(
  q: Omit<DoseAim, 'doseG'> & {
    doseMgPerKgFlour: number
    flourMassG: number
    activeShare: number
    strengthShare: number
    strengthErrorShare: number
    scales: readonly Scale[]
  },
): DoseChain {
  mustBeWithin('doseMgPerKgFlour', q.doseMgPerKgFlour, { over: 0, max: 1_000_000 })
  mustBeWithin('strengthErrorShare', q.strengthErrorShare, { min: 0, under: 1 })
  const activeG = activeMassG({ dose: q.doseMgPerKgFlour, unit: 'ppm-flour', flourMassG: q.flourMassG })
  const productG = productMassG({ activeMassG: activeG, activeShare: q.activeShare, strengthShare: q.strengthShare })
  if (productG > q.flourMassG)
    throw new CalcError('not-possible', {
      field: 'doseMgPerKgFlour',
      value: q.doseMgPerKgFlour,
      reason: 'more-than-flour',
    })
  const plan = atFlatFields(
    (field) => (field === 'doseG' ? 'doseMgPerKgFlour' : field),
    () => planPremix({ ...q, doseG: productG }),
  )
  const masses = {
    activeMg: 1000 * activeG,
    productMg: 1000 * productG,
    outcome: plan.outcome,
    warnings: productG > q.flourMassG / 10 ? ['more-than-a-tenth-of-flour' as const] : [],
  }
  if (plan.outcome === 'not-possible') {
    const none = { activeErrorShare: null, carrierInPortionG: null, premixMadeG: null, productLeftG: null }
    return { ...masses, weighings: [], weighingErrorShare: plan.bestErrorShare, ...none }
  }
  return {
    ...masses,
    weighings: weighingsOf(plan, readyScales(q.scales), q.coverageFactor),
    weighingErrorShare: plan.errorShare,
    activeErrorShare: Math.hypot(plan.errorShare, q.strengthErrorShare),
    carrierInPortionG: plan.carrierInPortionG,
    premixMadeG: plan.premixMadeG,
    productLeftG: plan.productLeftG,
  }
}

function weighingsOf(route: WeighingRoute, scales: readonly ReadyScale[], coverageFactor: number): ChainWeighing[] {
  const weighings: ChainWeighing[] = []
  let variance = 0
  // `weight` is how strongly an error of this mass works on the product in what is made: 1 − w for take and carrier.
  const weigh = (step: number, what: ChainWeighing['what'], massG: number, weight: number) => {
    const { scale, relative } = finestScale(scales, massG)!
    variance += (weight * relative) ** 2
    weighings.push({
      step,
      what,
      scaleId: scale.id,
      massG,
      readingG: roundToScaleG({ massG, resolutionG: scale.resolutionG }),
      errorShare: coverageFactor * relative,
      soFarErrorShare: coverageFactor * Math.sqrt(variance),
    })
  }
  route.steps.forEach(({ takeG, carrierG, totalG }, i) => {
    weigh(i + 1, 'take', takeG, carrierG / totalG)
    weigh(i + 1, 'carrier', carrierG, carrierG / totalG)
  })
  weigh(Math.max(1, route.steps.length), 'portion', route.portionG, 1)
  return weighings
}
