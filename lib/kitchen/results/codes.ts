import 'server-only'
import type { results } from '../../words/en/results'

/** Every code has words, or it does not compile. */
export type LimitCode = keyof typeof results.limits
export type UncountedCode = keyof typeof results.uncounted
export type VerdictCode = keyof typeof results.verdicts

/** What can or cannot be concluded, and of which arm (its position; null for the whole trial). */
export type Limit = { code: LimitCode; arm: number | null; facts: Readonly<Record<string, number>> }
