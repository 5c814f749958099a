import 'server-only'

/**
 * Why no whole mixing day may be added for one; null when it may. Only for a day that is short of a dough, and once: nobody
 * adds days until the result pleases. Which dough it is short of is not asked, because the answer would tell what it was.
 * @param short how many of its doughs are out and not baked again
 */
export function whyNoDayAdded(q: { short: number; isAddedFor: boolean }): 'day-whole' | 'day-added-for' | null {
  if (q.isAddedFor) return 'day-added-for'
  return q.short > 0 ? null : 'day-whole'
}
