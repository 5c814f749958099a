import 'server-only'

/** Where two values first differ, and what stands there; null when they are the same. */
export type Unlike = { at: string; was: string; is: string }

/**
 * The first place at which two plain values differ, fields in the order of the alphabet.
 * @param was what was shown; @param is what comes out
 */
export function firstUnlike(was: unknown, is: unknown, at = ''): Unlike | null {
  if (isThing(was) && isThing(is)) {
    const names = [...new Set([...Object.keys(was), ...Object.keys(is)])].sort()
    for (const name of names) {
      const found = firstUnlike(was[name], is[name], at === '' ? name : `${at}.${name}`)
      if (found) return found
    }
    return null
  }
  return Object.is(was, is) ? null : { at, was: textOf(was), is: textOf(is) }
}

function isThing(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null
}

function textOf(value: unknown): string {
  return value === undefined ? '–' : JSON.stringify(value)
}
