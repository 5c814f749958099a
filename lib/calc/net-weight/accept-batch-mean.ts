import { tQuantile } from '../distributions/t-quantile'
import { mustBeWithin } from '../checks'
import { contentsSummary } from './contents-summary'
import { countLight } from './count-light'
import { lightCautions } from './light-cautions'
import type { NetWeightCaution } from './types'

const CONFIDENCE = 0.995

export type BatchMean = {
  meanG: number
  sdG: number
  /** t₀.₉₉₅ / √n */
  factor: number
  /** The mean must be greater than this. */
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
 * The inspector's check of a batch by the mean of a sample: the mean is accepted when it is > Qn − t₀.₉₉₅(n − 1)·s/√n.
 * Packages below the tolerable errors are counted, and one below the second limit is refused whatever the mean. How many
 * may be below the first is the other half of the test: acceptBatchContents.
 * @param nominalG g, 5 to 15,000
 * @param contentsG net contents of the sample, at least two, each ≥ 0; samplePackages says how many
 * @throws CalcError 'empty' | 'not-finite' | 'out-of-range'
 * Source: Directive 76/211/EEC, Annex I, 1.3, and Annex II, 2.3.
 */
export function acceptBatchMean(q: { nominalG: number; contentsG: readonly number[] }): BatchMean {
  mustBeWithin('nominalG', q.nominalG, { min: 5, max: 15_000 })
  const { meanG, sdG } = contentsSummary({ contentsG: q.contentsG, least: 2 })
  const n = q.contentsG.length
  const factor = tQuantile({ p: CONFIDENCE, df: n - 1, tail: 'lower' }) / Math.sqrt(n)
  const leastMeanG = q.nominalG - factor * (sdG ?? 0)
  const { belowLower, belowAbsolute } = countLight(q)
  const isMeanAccepted = meanG > leastMeanG
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
      'other-half-of-the-test', 'package-differs-by-country', 'competent-person-checks',
    ],
  }
}
