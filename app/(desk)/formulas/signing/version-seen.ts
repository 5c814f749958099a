import type { getVersion } from '@/lib/kitchen/formulas/get-version'
import type { AnswerOf } from '@/lib/kitchen/query'

/** A version as its page got it. */
export type VersionSeen = AnswerOf<typeof getVersion>
