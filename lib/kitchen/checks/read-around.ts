import 'server-only'

/** A check as what was read around it is judged by, ms. */
export type StoodCheck = { at: number; isGood: boolean }

/** Which failed check something was read around, ms. */
export type ReadAround =
  /** Read before it, since the good check before; null where no check stands before. */
  | { outcome: 'before-failed'; failedAt: number; goodAt: number | null }
  /** Read after it, before another check was good. */
  | { outcome: 'after-failed'; failedAt: number; goodAt: null }

/**
 * Whether something was read by an instrument that may have been off then: the check right before or right after it
 * failed. Of checks at one moment the failed one counts, and what is read at that moment lies on both sides of it. Which
 * of them came in first is all one.
 * @returns null where the checks around it were good, or there are none
 */
export function readAround(at: number, checks: readonly StoodCheck[]): ReadAround | null {
  const before = momentOf(checks, Math.max(-Infinity, ...checks.map((check) => check.at).filter((each) => each <= at)))
  const after = momentOf(checks, Math.min(Infinity, ...checks.map((check) => check.at).filter((each) => each >= at)))
  if (before && !before.isGood) return { outcome: 'after-failed', failedAt: before.at, goodAt: null }
  if (after && !after.isGood) return { outcome: 'before-failed', failedAt: after.at, goodAt: before?.at ?? null }
  return null
}

function momentOf(checks: readonly StoodCheck[], at: number): StoodCheck | null {
  const then = checks.filter((check) => check.at === at)
  return then.length === 0 ? null : { at, isGood: then.every(({ isGood }) => isGood) }
}
