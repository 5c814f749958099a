import 'server-only'
import type { getDecision } from '@/lib/kitchen/decisions/get-decision'
import type { Query } from '@/lib/kitchen/query'

type ValueOf<Q> = Q extends Query<infer Value> ? Value : never

/** A decision as its page got it. */
export type DecisionSeen = ValueOf<typeof getDecision>
export type EvidenceSeen = NonNullable<DecisionSeen['evidence']>
