import 'server-only'

/**
 * By how much a device's clock and ours may differ before a time is odd. Devices set their clocks by the network, to
 * the second; five minutes are for one that was set by hand. Common practice, no source.
 */
export const clockToleranceMs = 5 * 60_000

export type OddTime = 'before-begun' | 'in-the-future'

/**
 * What is odd about the time that a device says a reading was taken at; null when nothing is. The reading is kept all
 * the same: a wrong clock is no wrong loaf. The time orders nothing, and what came before what goes by the receipt.
 * @param receivedAt by our own clock
 * @param begunAt when its dough was begun, by our own clock; null where nobody said
 */
export function oddTime(q: { takenAt: Date; receivedAt: Date; begunAt: Date | null }): OddTime | null {
  if (q.takenAt.getTime() > q.receivedAt.getTime() + clockToleranceMs) return 'in-the-future'
  if (q.begunAt && q.takenAt.getTime() < q.begunAt.getTime() - clockToleranceMs) return 'before-begun'
  return null
}
