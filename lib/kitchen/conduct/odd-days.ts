import 'server-only'

/**
 * Doughs of one mixing day are begun within so long, and two mixing days begin at least so far apart: a shift, and what
 * lies between two of them. The project's own rule.
 */
export const shiftMs = 12 * 60 * 60_000

/** `spread`: doughs of one mixing day were begun on several days. `together`: two mixing days were one. */
export type OddDay = { kind: 'spread'; day: number } | { kind: 'together'; day: number; other: number }

/**
 * What is odd about when the doughs of mixing days were begun. A comparison is made within each day, and each day counts
 * as one: whoever chooses on which morning a dough of a mixing day is begun chooses what it is compared with, and days
 * that are begun behind each other say less of other days than their number does. Nothing is refused for it, because a
 * broken mixer is no fault; it is told.
 * @param doughs one that was never begun says nothing
 */
export function oddDays(doughs: readonly { day: number; begunAt: Date | null }[]): OddDay[] {
  const spans = new Map<number, { first: number; last: number }>()
  for (const { day, begunAt } of doughs) {
    if (begunAt === null) continue
    const at = begunAt.getTime()
    const { first, last } = spans.get(day) ?? { first: at, last: at }
    spans.set(day, { first: Math.min(first, at), last: Math.max(last, at) })
  }
  const inTurn = [...spans].sort(([a, one], [b, other]) => one.first - other.first || a - b)
  return [
    ...[...spans.keys()]
      .sort((a, b) => a - b)
      .flatMap((day): OddDay[] => {
        const span = spans.get(day)
        return span && span.last - span.first > shiftMs ? [{ kind: 'spread', day }] : []
      }),
    ...inTurn.slice(1).flatMap(([day, { first }], before): OddDay[] => {
      const [other, former] = inTurn[before] ?? [day, { first: -Infinity }]
      return first - former.first < shiftMs
        ? [{ kind: 'together', day: Math.min(day, other), other: Math.max(day, other) }]
        : []
    }),
  ]
}
