import 'server-only'
import type { evidence } from '../../words/en/evidence'

/** Every code has words, or it does not compile. */
export type LimitCode = keyof typeof evidence.limits
export type UncountedCode = keyof typeof evidence.uncounted
export type VerdictCode = keyof typeof evidence.verdicts

/** What can or cannot be concluded, and of which arm (its position; null for the whole trial). */
export type Limit = { code: LimitCode; arm: number | null; facts: Readonly<Record<string, number>> }
