import 'server-only'
import type { getDecision } from '@/lib/kitchen/decisions/get-decision'
import type { AnswerOf } from '@/lib/kitchen/query'

/** A decision as its page got it. */
export type DecisionSeen = AnswerOf<typeof getDecision>
export type EvidenceSeen = NonNullable<DecisionSeen['evidence']>
