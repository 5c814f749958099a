import { sampledPackages } from './sampled-packages'

/** One stage of a sampling plan: packages weighed up to here, and what the defective ones among all of them decide. */
export type AcceptanceStage = {
  /** Packages of this stage alone. */
  packages: number
  /** Accept at so many defective or fewer, of all stages up to here. */
  acceptAt: number
  /** Refuse at so many or more; between the two the next stage is taken. */
  rejectAt: number
}

/** Largest batch of a row, and its two stages. */
const DOUBLE_PLANS = [
  { upToPackages: 500, stages: [stage(30, 1, 3), stage(30, 4, 5)] },
  { upToPackages: 3200, stages: [stage(50, 2, 5), stage(50, 6, 7)] },
  { upToPackages: 10_000, stages: [stage(80, 3, 7), stage(80, 8, 9)] },
] as const

function stage(packages: number, acceptAt: number, rejectAt: number): AcceptanceStage {
  return { packages, acceptAt, rejectAt }
}

/**
 * The inspector's sampling plan for the contents of single packages: two stages, or one of 20 when packages are destroyed.
 * @param batchPackages whole, 100 to 10,000; of fewer than 100 the plan weighs every package, and has no numbers of its own
 * @param isDestructive the package is opened or destroyed by it
 * @throws CalcError as sampledPackages
 * Source: Directive 76/211/EEC, Annex II, 2.1, 2.2.1 and 2.2.2.
 * @example 400 packages: 30, accept at 1, refuse at 3; then 30 more, of all 60 accept at 4, refuse at 5
 */
export function acceptancePlan(q: { batchPackages: number; isDestructive: boolean }): readonly AcceptanceStage[] {
  const sample = sampledPackages(q)
  if (q.isDestructive) return [stage(sample, 1, 2)]
  return DOUBLE_PLANS.find(({ upToPackages }) => q.batchPackages <= upToPackages)!.stages
}
