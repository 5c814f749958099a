import { normalQuantile } from '../distributions/normal-quantile'
import { normalTail } from '../distributions/normal-tail'
import { CalcError } from '../error'
import { contentsSummary } from './contents-summary'
import { countLight } from './count-light'
import { lightCautions } from './light-cautions'
import { tolerableNegativeErrorG } from './tolerable-negative-error'
import type { NetWeightCaution } from './types'

/** Most that may be expected below nominal less the error, and below nominal less twice the error. */
const MOST_BELOW_LOWER_SHARE = 0.025
const MOST_BELOW_ABSOLUTE_SHARE = 0.0001

export type AverageWeightCheck = {
  meanG: number
  sdG: number
  /** Least mean that keeps all three rules at this spread, and which of them asks for it. */
  leastMeanG: number
  decidedBy: 'mean' | 'lower-limit' | 'absolute-limit'
  /** Mean less least mean, and how sure of it the readings are. */
  marginG: number
  marginStandardErrorG: number
  expectedBelowLowerShare: number
  expectedBelowAbsoluteShare: number
  /** Packages that were weighed and are below the limits: found, not expected. */
  belowLower: number
  belowAbsolute: number
  isWithinRules: boolean
  cautions: NetWeightCaution[]
}

/**
 * Whether production keeps the average-weight rules, from its own check-weighing: contents taken as normally spread, the
 * mean not below nominal, at most 2.5 % expected below nominal less the tolerable error, at most one in 10,000 below
 * nominal less twice the error (which stands in for 'none'). A package that was found below that
 * limit breaks the rules, whatever the spread says of the others.
 * @param nominalG g, 5 to 15,000; contentsG net, of production at its usual setting, at least ten, not all alike
 * @throws CalcError 'empty' | 'not-finite' | 'out-of-range'; 'not-possible' with reason 'no-spread'
 * Source: UK trading standards guidance on the Packaged Goods Regulations 2006; one in 10,000: from memory.
 */
export function averageWeightCheck(q: { nominalG: number; contentsG: readonly number[] }): AverageWeightCheck {
  const { lowerLimitG, absoluteLimitG } = tolerableNegativeErrorG(q)
  const { meanG, sdG } = contentsSummary({ contentsG: q.contentsG, least: 10 })
  if (sdG === null || sdG <= 1e-12 * meanG) {
    throw new CalcError('not-possible', { field: 'contentsG', reason: 'no-spread' })
  }
  const needed = [
    ['mean', q.nominalG],
    ['lower-limit', lowerLimitG + sdG * normalQuantile({ p: MOST_BELOW_LOWER_SHARE, tail: 'upper' })],
    ['absolute-limit', absoluteLimitG + sdG * normalQuantile({ p: MOST_BELOW_ABSOLUTE_SHARE, tail: 'upper' })],
  ] as const
  const [decidedBy, leastMeanG] = needed.reduce((most, one) => (one[1] > most[1] ? one : most))
  const marginG = meanG - leastMeanG
  const { belowLower, belowAbsolute } = countLight(q)
  return {
    meanG,
    sdG,
    leastMeanG,
    decidedBy,
    marginG,
    marginStandardErrorG: sdG / Math.sqrt(q.contentsG.length),
    expectedBelowLowerShare: normalTail({ z: (lowerLimitG - meanG) / sdG, tail: 'lower' }),
    expectedBelowAbsoluteShare: normalTail({ z: (absoluteLimitG - meanG) / sdG, tail: 'lower' }),
    belowLower,
    belowAbsolute,
    isWithinRules: marginG >= 0 && belowAbsolute === 0,
    cautions: [...lightCautions({ belowAbsolute }), 'package-differs-by-country', 'competent-person-checks'],
  }
}
