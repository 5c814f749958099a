import type { problems } from '../words/en/problems'
import type { refusals } from '../words/en/refusals'

/** Every code has words, or it does not compile: the codes are the keys of the words. */
export type RefusalCode = keyof typeof refusals
export type ProblemCode = keyof typeof problems
