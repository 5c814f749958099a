import { mustBeWithin } from '../checks'
import { acceptancePlan } from './acceptance-plan'
import type { NetWeightCaution } from './types'

export type AcceptanceChance = {
  /** Chance that the batch is accepted by the number of packages that are too light. */
  acceptedShare: number
  /** Chance that the first sample decides. */
  firstDecidesShare: number
  /** Packages that are weighed on average. */
  meanPackages: number
  cautions: NetWeightCaution[]
}

/**
 * How likely the inspector's plan accepts a batch of which a share is too light: accept on the first sample, or on both
 * together where the first does not decide. Packages are taken as drawn one by one from a large lot (binomial), and none as
 * below the second limit, which alone refuses a batch.
 * @param batchPackages whole, 100 to 10,000; isDestructive as acceptancePlan
 * @param defectiveShare packages short by more than the tolerable error, of all, 0 to 1
 * @returns chances 0 to 1, each a sum of terms that are all positive, about 1e-13 relative
 * @throws CalcError as acceptancePlan; 'not-finite' | 'out-of-range'
 * Source: Directive 76/211/EEC, Annex II, 2.2.1 and 2.2.2, for the plan; binomial distribution.
 * @example 400 packages, not destroyed, 5 % too light: accepted with a chance of 0.76360
 */
export function acceptanceChance(q: {
  batchPackages: number
  isDestructive: boolean
  defectiveShare: number
}): AcceptanceChance {
  const [first, second] = acceptancePlan(q)
  const share = mustBeWithin('defectiveShare', q.defectiveShare, { min: 0, max: 1 })
  const chanceOf = (count: number, packages: number) => binomialTerm(count, packages, share)
  const atMost = (most: number, packages: number) => sumOver(0, most, (count) => chanceOf(count, packages))
  let acceptedShare = atMost(first!.acceptAt, first!.packages)
  let openShare = 0
  if (second) {
    const open = (weigh: (count: number) => number) =>
      sumOver(first!.acceptAt + 1, first!.rejectAt - 1, (count) => chanceOf(count, first!.packages) * weigh(count))
    openShare = open(() => 1)
    acceptedShare += open((count) => atMost(second.acceptAt - count, second.packages))
  }
  return {
    acceptedShare,
    firstDecidesShare: 1 - openShare,
    meanPackages: first!.packages + openShare * (second?.packages ?? 0),
    cautions: [
      'chance-for-a-large-lot',
      'mean-is-checked-besides',
      'package-differs-by-country',
      'competent-person-checks',
    ],
  }
}

/** Chance of exactly so many in n; n is at most 80 here, so no factor leaves the range of numbers. */
function binomialTerm(count: number, n: number, share: number): number {
  let ways = 1
  for (let i = 1; i <= count; i++) ways = (ways * (n - count + i)) / i
  return ways * share ** count * (1 - share) ** (n - count)
}

function sumOver(from: number, to: number, term: (count: number) => number): number {
  let sum = 0
  for (let count = from; count <= to; count++) sum += term(count)
  return sum
}
