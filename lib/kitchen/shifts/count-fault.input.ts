/** What becomes of pieces, in the order in which it is asked. */
export const becomesOfPieces = ['sampled', 'sold', 'given', 'wasted'] as const
export type BecomesOfPieces = (typeof becomesOfPieces)[number]

/** A dough makes no more; a figure beyond it is a slip. */
export const mostPieces = 10_000

/** How many pieces there were and what became of them; nothing for what was not said. */
export type PieceFigures = { made: number; good: number } & { [What in BecomesOfPieces]?: number | null }

/**
 * What cannot be of a count: more good ones than were made, or more gone than were made. A piece is sampled, sold, given
 * or wasted once; those of which nothing is said are still there.
 */
export function countFault(
  count: PieceFigures,
): { at: 'good' | 'wasted'; code: 'more-than-made' | 'more-gone' } | null {
  if (count.good > count.made) return { at: 'good', code: 'more-than-made' }
  const gone = becomesOfPieces.reduce((sum, what) => sum + (count[what] ?? 0), 0)
  return gone > count.made ? { at: 'wasted', code: 'more-gone' } : null
}
