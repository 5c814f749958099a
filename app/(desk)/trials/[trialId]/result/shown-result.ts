import 'server-only'
import type { getResult } from '@/lib/kitchen/results/get-result'
import type { getDesk } from '@/lib/kitchen/people/get-desk'
import type { AnswerOf } from '@/lib/kitchen/query'

export type ShownResult = AnswerOf<typeof getResult>
export type ShownCosts = NonNullable<ShownResult['costs']>
export type ShownComparison = NonNullable<ShownResult['analysis']['comparison']>
/** As much of a trial as its numbers need to be written; frozen evidence has it too. */
export type FormedTrial = {
  declared: Pick<ShownResult['declared'], 'kind' | 'measure' | 'margin' | 'marginUnit' | 'confidencePct'>
  analysis: { comparison: Pick<ShownComparison, 'arms' | 'controlMean'> | null }
}
export type ShownArm = ShownComparison['arms'][number]
export type ShownBakery = AnswerOf<typeof getDesk>['bakery']
