import type { AnswerOf } from '@/lib/kitchen/query'
import type { getPlan } from '@/lib/kitchen/trials/get-plan'
import type { Language, Words } from '@/lib/words/words'
import type { PlanFormat } from '@/lib/words/format/plan-format'

/** What the query of a plan answers. */
export type PlanSeen = AnswerOf<typeof getPlan>
export type PlanShown = PlanSeen['plan']
export type ArmShown = PlanShown['arms'][number]
export type WarningShown = PlanShown['warnings'][number]

/** What every part of the plan's page needs to write it. */
export type PlanPart = { plan: PlanShown; words: Words; format: PlanFormat; language: Language }
