import 'server-only'
import type { results } from '../../words/en/results'

/** What only evidence of format 1 says: words for it stay. */
type Former = 'one-batch-per-arm' | 'one-batch-in-control' | 'one-batch-in-arm' | 'confounded-with-days'

/** Every code has words, or it does not compile. */
export type LimitCode = Exclude<keyof typeof results.limits, Former>
export type UncountedCode = keyof typeof results.uncounted

/** What can or cannot be concluded, and of which arm (its position; null for the whole trial). */
export type Limit = { code: LimitCode; arm: number | null; facts: Readonly<Record<string, number>> }

/** Notes what cannot be concluded, of an arm or of the whole trial. */
export type SayLimit = (code: LimitCode, arm?: number | null, facts?: Limit['facts']) => void
