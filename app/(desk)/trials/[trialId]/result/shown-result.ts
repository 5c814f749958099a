import 'server-only'
import type { getCostAndGain } from '@/lib/kitchen/evidence/get-cost-and-gain'
import type { getResult } from '@/lib/kitchen/evidence/get-result'
import type { getDesk } from '@/lib/kitchen/people/get-desk'
import type { Query } from '@/lib/kitchen/query'

type ValueOf<Q> = Q extends Query<infer Value> ? Value : never

export type ShownResult = ValueOf<typeof getResult>
export type ShownCosts = ValueOf<typeof getCostAndGain>
export type ShownComparison = NonNullable<ShownResult['analysis']['comparison']>
/** As much of a trial as its numbers need to be written; frozen evidence has it too. */
export type FormedTrial = {
  declared: Pick<ShownResult['declared'], 'kind' | 'measure' | 'margin' | 'marginUnit' | 'confidencePct'>
  analysis: { comparison: Pick<ShownComparison, 'arms' | 'controlMean'> | null }
}
export type ShownArm = ShownComparison['arms'][number]
export type ShownBakery = ValueOf<typeof getDesk>['bakery']
