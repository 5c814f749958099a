import 'server-only'
import type { loadEvidence } from '../results/load-evidence'
import { analyseOnce } from '../results/analyse-once'
import type { TrialAnalysis } from '../results/analyse-trial'
import { compareWithTakenOut } from '../results/compare-with-taken-out'

export type WorkedOut = {
  analysis: TrialAnalysis
  withTakenOut: Awaited<ReturnType<typeof compareWithTakenOut>>
}

/** What a trial shows, with the doughs too that were taken out after they were read. @throws Refusal 'took-too-long' | 'not-worked-out' */
export async function workOut({
  declared,
  batches,
}: Pick<Awaited<ReturnType<typeof loadEvidence>>, 'declared' | 'batches'>): Promise<WorkedOut> {
  const [analysis, withTakenOut] = await Promise.all([
    analyseOnce(declared, batches),
    compareWithTakenOut(declared, batches),
  ])
  return { analysis, withTakenOut }
}
