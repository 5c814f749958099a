import { tQuantile } from '../distributions/t-quantile'
import { mustBeWithin } from '../checks'
import { contentsSummary } from './contents-summary'
import type { NetWeightCaution } from './types'

const CONFIDENCE = 0.995

export type BatchMean = {
  meanG: number
  sdG: number
  /** t₀.₉₉₅ / √n */
  factor: number
  /** The mean must be greater than this. */
  leastMeanG: number
  isAccepted: boolean
  cautions: NetWeightCaution[]
}

/**
 * The inspector's check of a batch by the mean of a sample: accepted when mean > Qn − t₀.₉₉₅(n − 1)·s/√n. The other half
 * of the test, how many packages of the sample are too light, is not in it.
 * @param nominalG g, 5 to 15,000
 * @param contentsG net contents of the sample, at least two, each ≥ 0; samplePackages says how many
 * @throws CalcError 'empty' | 'not-finite' | 'out-of-range'
 * Source: Directive 76/211/EEC, Annex II, 2.3.
 */
export function acceptBatchMean(q: { nominalG: number; contentsG: readonly number[] }): BatchMean {
  mustBeWithin('nominalG', q.nominalG, { min: 5, max: 15_000 })
  const { meanG, sdG } = contentsSummary({ contentsG: q.contentsG, least: 2 })
  const n = q.contentsG.length
  const factor = tQuantile({ p: CONFIDENCE, df: n - 1, tail: 'lower' }) / Math.sqrt(n)
  const leastMeanG = q.nominalG - factor * (sdG ?? 0)
  return {
    meanG,
    sdG: sdG ?? 0,
    factor,
    leastMeanG,
    isAccepted: meanG > leastMeanG,
    cautions: ['other-half-of-the-test', 'package-differs-by-country', 'competent-person-checks'],
  }
}
