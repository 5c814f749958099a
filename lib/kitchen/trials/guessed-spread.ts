import 'server-only'

/**
 * What is taken of a bakery's spread until it has its own, % of the mean. Doughs of one day and loaves of a dough: a
 * guess, from memory. How much a kind of dough by itself is better or worse on one mixing day than on another: common
 * practice, no source.
 */
export const guessedSpread = { batchCvPct: 3, loafCvPct: 2.5, armByDayCvPct: 1.5 } as const
