import 'server-only'
import type { getResult } from '@/lib/kitchen/amendments/get-result'
import type { getDesk } from '@/lib/kitchen/people/get-desk'
import type { AnswerOf } from '@/lib/kitchen/query'

/** What came after the closing is shown beside it, by `ShownAmendments`. */
export type ShownResult = Omit<AnswerOf<typeof getResult>, 'after'>
export type ShownCosts = NonNullable<ShownResult['costs']>
export type ShownComparison = NonNullable<ShownResult['analysis']['comparison']>
/** As much of a trial as its numbers need to be written; frozen evidence has it too. */
export type FormedTrial = {
  declared: Pick<ShownResult['declared'], 'kind' | 'measure' | 'margin' | 'marginUnit' | 'confidencePct' | 'holdsFor'>
  analysis: { comparison: Pick<ShownComparison, 'arms' | 'controlMean'> | null }
}
export type ShownArm = ShownComparison['arms'][number]
export type ShownBakery = AnswerOf<typeof getDesk>['bakery']
