import 'server-only'
import type { loadEvidence } from '../results/load-evidence'
import { analyseOnce } from '../results/analyse-once'
import type { TrialAnalysis } from '../results/analyse-trial'
import { compareOtherwise } from '../results/compare-otherwise'
import { headlineComparison } from '../results/headline-comparison'
import type { HeadlineComparison } from '../results/headline-from'
import type { VolumeRatios } from '../results/volume-ratios'
import { volumesOfTrial } from '../results/volumes-of-trial'

export type WorkedOut = {
  analysis: TrialAnalysis
  otherwise: Awaited<ReturnType<typeof compareOtherwise>>
  headline: HeadlineComparison
}

type Loaded = Awaited<ReturnType<typeof loadEvidence>>

/**
 * What a trial shows, what it would show with some doughs counted otherwise, and what its headline rests on.
 * @throws Refusal 'took-too-long' | 'not-worked-out'
 */
export async function workOut({
  declared,
  batches,
  conduct: { foundCauses: found },
}: Pick<Loaded, 'declared' | 'batches'> & { conduct: Pick<Loaded['conduct'], 'foundCauses'> }): Promise<WorkedOut> {
  const [analysis, otherwise] = await Promise.all([analyseOnce(declared, batches), compareOtherwise(declared, batches)])
  const { comparison } = analysis
  return { analysis, otherwise, headline: await headlineComparison({ declared, batches, comparison, found }) }
}

/** How its loaves stand in volume to the control's, of what was worked out. @throws Refusal as workOut */
export function volumesOf(
  { declared, batches, header }: Pick<Loaded, 'declared' | 'batches' | 'header'>,
  { analysis: { comparison } }: WorkedOut,
): Promise<VolumeRatios> {
  return volumesOfTrial({ declared, batches, measureCode: header.measure.code, comparison })
}
