import 'server-only'
import type { getDecision } from '@/lib/kitchen/decisions/get-decision'
import type { getVersion } from '@/lib/kitchen/formulas/get-version'
import type { AnswerOf } from '@/lib/kitchen/query'

/** A decision as its page got it. */
export type DecisionSeen = AnswerOf<typeof getDecision>
/** The version that a decision drafted, as the page got it. */
export type VersionSeen = AnswerOf<typeof getVersion>
export type EvidenceSeen = NonNullable<DecisionSeen['evidence']>
