import { tQuantile } from '../distributions/t-quantile'
import { mustBeWithin } from '../checks'
import { contentsSummary } from './contents-summary'
import { countLight } from './count-light'
import { lightCautions } from './light-cautions'
import { mustBePlansSample } from './must-be-plans-sample'
import { sampledPackages } from './sampled-packages'
import type { NetWeightCaution } from './types'

const CONFIDENCE = 0.995

export type BatchMean = {
  meanG: number
  sdG: number
  /** t₀.₉₉₅ / √n */
  factor: number
  /** The mean must be no less than this. */
  leastMeanG: number
  isMeanAccepted: boolean
  /** Packages of the sample below nominal less the tolerable error, and below nominal less twice that error. */
  belowLower: number
  belowAbsolute: number
  /** By the mean, and with no package in the sample that may not be sold. */
  isAccepted: boolean
  cautions: NetWeightCaution[]
}

/**
 * The inspector's check of a batch by the mean of a sample: the mean is accepted when it is no less than
 * Qn − t₀.₉₉₅(n − 1)·s/√n, which is Qn − 0.503 s, 0.379 s or 0.640 s for the plan's 30, 50 or 20 packages.
 * Packages below the tolerable errors are counted, and one below the second limit is refused whatever the mean. How many
 * may be below the first is the other half of the test: acceptBatchContents.
 * @param batchPackages whole, 100 to 10,000; fewer are weighed one by one and judged by judgeLot
 * @param isDestructive the package is opened or destroyed by it; nominalG g, 5 to 15,000
 * @param contentsG net contents, each ≥ 0: exactly as many as samplePackages says
 * @throws CalcError 'not-finite' | 'out-of-range' | 'not-possible' as sampledPackages; 'wrong-shape' with reason
 *   'not-the-plans-sample'
 * Source: Directive 76/211/EEC, Annex I, 1.3, and Annex II, 2.3. Its 2.3.1 says 'greater than'; the criteria of 2.3.3 as
 *   printed in the UK regulations of 2006 (SI 2006/659, schedule 2, 4.5 and 4.6) accept a mean at the limit, so that packages
 *   which all hold what is marked are not refused.
 */
export function acceptBatchMean(q: {
  batchPackages: number
  isDestructive: boolean
  nominalG: number
  contentsG: readonly number[]
}): BatchMean {
  mustBeWithin('nominalG', q.nominalG, { min: 5, max: 15_000 })
  const n = sampledPackages(q)
  mustBePlansSample(q.contentsG, n)
  const { meanG, sdG } = contentsSummary({ contentsG: q.contentsG, least: n })
  const factor = tQuantile({ p: CONFIDENCE, df: n - 1, tail: 'lower' }) / Math.sqrt(n)
  const leastMeanG = q.nominalG - factor * (sdG ?? 0)
  const { belowLower, belowAbsolute } = countLight(q)
  // A mean that is at the limit but for the dust of its sum is at the limit.
  const isMeanAccepted = meanG >= leastMeanG - 1e-12 * q.nominalG
  return {
    meanG,
    sdG: sdG ?? 0,
    factor,
    leastMeanG,
    isMeanAccepted,
    belowLower,
    belowAbsolute,
    isAccepted: isMeanAccepted && belowAbsolute === 0,
    cautions: [
      ...lightCautions({ belowAbsolute }),
      'other-half-of-the-test',
      'package-differs-by-country',
      'competent-person-checks',
    ],
  }
}
