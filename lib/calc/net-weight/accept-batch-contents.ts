import { mustBeWithin, mustHaveAtMost } from '../checks'
import { CalcError } from '../error'
import { acceptancePlan } from './acceptance-plan'
import { countLight } from './count-light'
import { lightCautions } from './light-cautions'
import { tolerableNegativeErrorG } from './tolerable-negative-error'
import type { NetWeightCaution } from './types'

export type BatchContents = {
  lowerLimitG: number
  absoluteLimitG: number
  /** Packages short by more than the tolerable error. */
  defective: number
  /** Of these, short by more than twice that error: none of them may be sold under the mark. */
  belowAbsolute: number
  acceptAt: number
  rejectAt: number
  /** By the sample; a package below the second limit refuses it as well. */
  outcome: 'accepted' | 'refused' | 'take-second-sample'
  /** Packages of the second sample, when it is to be taken. */
  nextPackages: number | null
  cautions: NetWeightCaution[]
}

/**
 * The inspector's check of single packages by the number that is too light, one stage or two. A package below the second
 * limit may not be sold under the mark whatever the numbers: a sample that holds one is refused until it is sorted out.
 * @param batchPackages whole, 100 to 10,000; isDestructive as acceptancePlan
 * @param nominalG g, 5 to 15,000
 * @param contentsG net contents, each ≥ 0: exactly the first sample, or the first and the second
 * @throws CalcError 'not-finite' | 'out-of-range' | 'not-possible' as acceptancePlan; 'wrong-shape' with reason
 *   'not-the-plans-sample' or 'not-a-whole-sample'; 'not-possible' with reason 'first-sample-decides' when a second was taken without need
 * Source: Directive 76/211/EEC, Annex I, 1.3, and Annex II, 2.2. The mean is checked besides: acceptBatchMean.
 */
export function acceptBatchContents(q: {
  batchPackages: number
  isDestructive: boolean
  nominalG: number
  contentsG: readonly number[]
}): BatchContents {
  const plan = acceptancePlan(q)
  const { lowerLimitG, absoluteLimitG } = tolerableNegativeErrorG(q)
  mustHaveAtMost('contentsG', q.contentsG, 160)
  q.contentsG.forEach((contentG, i) => mustBeWithin(`contentsG[${i}]`, contentG, { min: 0 }))
  const tooLightIn = (packages: number) =>
    q.contentsG.slice(0, packages).filter((contentG) => contentG < lowerLimitG).length
  const { belowAbsolute } = countLight(q)
  let weighed = 0
  for (const [i, { packages, acceptAt, rejectAt }] of plan.entries()) {
    weighed += packages
    const isLast = weighed === q.contentsG.length
    const defective = tooLightIn(weighed)
    const hasUnsaleable = q.contentsG.slice(0, weighed).some((contentG) => contentG < absoluteLimitG)
    const isDecided = hasUnsaleable || defective <= acceptAt || defective >= rejectAt
    if (!isLast && isDecided && q.contentsG.length > weighed && i + 1 < plan.length) {
      throw new CalcError('not-possible', {
        field: 'contentsG',
        value: q.contentsG.length,
        max: weighed,
        reason: 'first-sample-decides',
      })
    }
    if (isLast) {
      return {
        lowerLimitG,
        absoluteLimitG,
        defective,
        belowAbsolute,
        acceptAt,
        rejectAt,
        outcome: hasUnsaleable || defective >= rejectAt ? 'refused' : isDecided ? 'accepted' : 'take-second-sample',
        nextPackages: isDecided ? null : plan[i + 1]!.packages,
        cautions: [
          ...lightCautions({ belowAbsolute }),
          'mean-is-checked-besides',
          'package-differs-by-country',
          'competent-person-checks',
        ],
      }
    }
  }
  throw new CalcError('wrong-shape', {
    field: 'contentsG',
    value: q.contentsG.length,
    min: plan[0]!.packages,
    max: weighed,
    reason: plan.length === 1 ? 'not-the-plans-sample' : 'not-a-whole-sample',
  })
}
