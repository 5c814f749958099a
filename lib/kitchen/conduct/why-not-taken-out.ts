import 'server-only'
import type { OutState } from './out-state.input'

/**
 * Why a dough may not be taken out of the comparison so; null when it may. A dough that was never begun cannot be lost,
 * it was not baked. Once what decides was read of it, it is out only for a cause that was noted before: whoever has seen
 * the value could choose. All times are receipts, by our own clock; at the same moment a cause is not before.
 * @param firstReadAt when the first reading came in that the trial's primary measure rests on, also one that was
 * corrected since; null when none has
 * @param causesNotedAt when causes were noted at the dough
 */
export function whyNotTakenOut(q: {
  to: OutState
  begunAt: Date | null
  firstReadAt: Date | null
  causesNotedAt: readonly Date[]
}): 'not-begun-not-lost' | 'begun-so-baked' | 'read-before-any-cause' | null {
  if (q.to === 'not_baked') return q.begunAt === null ? null : 'begun-so-baked'
  if (q.begunAt === null) return 'not-begun-not-lost'
  const { firstReadAt } = q
  if (firstReadAt === null) return null
  return q.causesNotedAt.some((at) => at < firstReadAt) ? null : 'read-before-any-cause'
}
