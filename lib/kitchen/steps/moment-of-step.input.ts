type Said = {
  /** By the device's clock, ms. */
  takenAt: number
  clockAheadS: number | null
  agoS: number
  /** When it came in and when its dough was begun, by our clock, ms; null where nobody said. */
  receivedAt: number
  begunAt: number | null
}

/**
 * When a step was, by our own clock, ms: as the device said, put right by what it knew of its clock. A clock that is wrong
 * all the same brings it no further than to when the entry came in and when its dough was begun.
 */
export function momentOfStep({ takenAt, clockAheadS, agoS, receivedAt, begunAt }: Said): number {
  const entered = Math.min(takenAt + (clockAheadS ?? 0) * 1000, receivedAt)
  return Math.min(receivedAt, Math.max(entered - agoS * 1000, begunAt ?? -Infinity))
}
