import 'server-only'
import type { getCostAndGain } from '@/lib/kitchen/evidence/get-cost-and-gain'
import type { getResult } from '@/lib/kitchen/evidence/get-result'
import type { getDesk } from '@/lib/kitchen/people/get-desk'
import type { Query } from '@/lib/kitchen/query'

type ValueOf<Q> = Q extends Query<infer Value> ? Value : never

export type ShownResult = ValueOf<typeof getResult>
export type ShownCosts = ValueOf<typeof getCostAndGain>
export type ShownComparison = NonNullable<ShownResult['analysis']['comparison']>
export type ShownArm = ShownComparison['arms'][number]
export type ShownBakery = ValueOf<typeof getDesk>['bakery']
