import { contentsSummary } from './contents-summary'
import { mustBePlansSample } from './must-be-plans-sample'
import type { NetWeightCaution } from './types'
import { usAllowableVariationG } from './us-allowable-variation'
import { usDryingAllowanceG, type UsDryingProduct } from './us-drying-allowance'
import { usSamplingPlan } from './us-sampling-plan'

export type UsLotCheck = {
  /** Mean of the sample less the label: below zero when packages are short. */
  meanErrorG: number
  sdG: number
  factor: number
  /** Sample error limit: s times the factor. */
  errorLimitG: number
  dryingAllowanceG: number
  isMeanAccepted: boolean
  /** How much a single package may be short, with what it may have dried out. */
  shortageLimitG: number
  shortPackages: number
  shortAllowed: number
  isLotAccepted: boolean
  cautions: NetWeightCaution[]
}

/**
 * The US inspector's check of a lot (category A). Mean: not below the label, or below it by less than the sample error limit.
 * Single packages: no more of the sample short beyond the allowed variation than the plan allows. Both must be met. What a
 * package may have dried out is added to both limits, where the handbook prints an allowance.
 * @param lotPackages whole, 12 to 1,000,000; labelledG g, above 0 to 2630.8
 * @param contentsG net contents, each ≥ 0: exactly as many as usSamplingPlan says
 * @throws CalcError as usSamplingPlan and usAllowableVariationG; 'wrong-shape' with reason 'not-the-plans-sample'
 * Source: NIST Handbook 133 (2026), chapter 2, for the rules and the allowance; tables 2-1 and 2-5 from memory but for two
 *   rows of the latter: check the handbook in force.
 */
export function usLotCheck(q: {
  lotPackages: number
  labelledG: number
  product: UsDryingProduct
  contentsG: readonly number[]
}): UsLotCheck {
  const { samplePackages, factor, shortAllowed } = usSamplingPlan(q)
  const { variationG } = usAllowableVariationG(q)
  mustBePlansSample(q.contentsG, samplePackages)
  const { meanG, sdG } = contentsSummary({ contentsG: q.contentsG, least: samplePackages })
  const dryingAllowanceG = usDryingAllowanceG(q)
  // Dust of sums and differences is no shortage.
  const dustG = 1e-12 * q.labelledG
  const errorLimitG = (sdG ?? 0) * factor
  const meanErrorG = meanG - q.labelledG
  const isMeanAccepted = meanErrorG >= -dustG || -meanErrorG < errorLimitG + dryingAllowanceG
  const shortageLimitG = variationG + dryingAllowanceG
  const shortPackages = q.contentsG.filter((contentG) => q.labelledG - contentG > shortageLimitG + dustG).length
  return {
    meanErrorG,
    sdG: sdG ?? 0,
    factor,
    errorLimitG,
    dryingAllowanceG,
    isMeanAccepted,
    shortageLimitG,
    shortPackages,
    shortAllowed,
    isLotAccepted: isMeanAccepted && shortPackages <= shortAllowed,
    cautions: [
      q.product === 'flour' ? 'drying-out-since-packing' : 'no-drying-allowance-for-bread',
      'from-memory-check-handbook',
      'competent-person-checks',
    ],
  }
}
