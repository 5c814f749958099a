import 'server-only'
import type { loadEvidence } from '../results/load-evidence'
import { analyseOnce } from '../results/analyse-once'
import type { TrialAnalysis } from '../results/analyse-trial'
import { compareOtherwise } from '../results/compare-otherwise'

export type WorkedOut = {
  analysis: TrialAnalysis
  otherwise: Awaited<ReturnType<typeof compareOtherwise>>
}

/** What a trial shows, and what it would show with some doughs counted otherwise. @throws Refusal 'took-too-long' | 'not-worked-out' */
export async function workOut({
  declared,
  batches,
}: Pick<Awaited<ReturnType<typeof loadEvidence>>, 'declared' | 'batches'>): Promise<WorkedOut> {
  const [analysis, otherwise] = await Promise.all([analyseOnce(declared, batches), compareOtherwise(declared, batches)])
  return { analysis, otherwise }
}
