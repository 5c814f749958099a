import { contentsSummary } from './contents-summary'
import { countLight } from './count-light'
import { lightCautions } from './light-cautions'
import { tolerableNegativeErrorG } from './tolerable-negative-error'
import type { NetWeightCaution } from './types'

/** Part of the packages that may be below nominal less the tolerable error. */
const MOST_BELOW_SHARE = 0.025

export type LotJudgement = {
  packages: number
  meanG: number
  lowerLimitG: number
  absoluteLimitG: number
  belowLower: number
  belowLowerShare: number
  belowAbsolute: number
  isMeanEnough: boolean
  areFewBelowLower: boolean
  areNoneBelowAbsolute: boolean
  keepsAllRules: boolean
  cautions: NetWeightCaution[]
}

/**
 * The packer's three rules on a lot of which every package was weighed: the mean is not below nominal, at most 2.5 % of
 * the packages are below nominal less the tolerable error, and none is below nominal less twice that error.
 * @param nominalG g, 5 to 15,000; contentsG net, one or more, each ≥ 0
 * @throws CalcError 'empty' | 'not-finite' | 'out-of-range'
 * Source: UK trading standards guidance on the Weights and Measures (Packaged Goods) Regulations 2006; errors as
 *   tolerableNegativeErrorG. What counts as a package differs by country: local rules decide.
 */
export function judgeLot(q: { nominalG: number; contentsG: readonly number[] }): LotJudgement {
  const { lowerLimitG, absoluteLimitG } = tolerableNegativeErrorG(q)
  const { meanG } = contentsSummary({ contentsG: q.contentsG, least: 1 })
  const packages = q.contentsG.length
  const { belowLower, belowAbsolute } = countLight(q)
  const rules = {
    // A mean that is nominal but for the dust of its sum is nominal.
    isMeanEnough: meanG >= q.nominalG * (1 - 1e-12),
    areFewBelowLower: belowLower <= MOST_BELOW_SHARE * packages,
    areNoneBelowAbsolute: belowAbsolute === 0,
  }
  return {
    packages,
    meanG,
    lowerLimitG,
    absoluteLimitG,
    belowLower,
    belowLowerShare: belowLower / packages,
    belowAbsolute,
    ...rules,
    keepsAllRules: Object.values(rules).every(Boolean),
    cautions: [...lightCautions({ belowAbsolute }), 'package-differs-by-country', 'competent-person-checks'],
  }
}
