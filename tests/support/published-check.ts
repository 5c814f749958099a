import { expect, test } from 'vitest'
import type { CalcId } from '@/lib/calc/catalogue'

export type PublishedCheck = {
  /** Number of the fact, where it has one. */
  id?: string
  /** Calculations of the catalogue whose answer is checked. */
  of?: readonly CalcId[]
  what: string
  /** Author, title, year, section. */
  source: string
  /** 'published', 'published inputs', 'common practice, no source', 'from memory', or the program it was computed with. */
  status: string
  expected: number
  got: () => number
  /** A bare number is relative, and absolute where the expected value is 0. */
  tolerance: number | { relative: number } | { absolute: number }
  /** Why this tolerance and no other. */
  why: string
}

/** One test of a value against an outside source; the message shows how far off the result is. */
export function publishedCheck(check: PublishedCheck): void {
  const { id = '', what, source, status, expected, tolerance, why } = check
  test(`${id} ${what} (${source}; ${status})`.trim(), () => {
    const got = check.got()
    const scale = expected === 0 ? 1 : Math.abs(expected)
    const allowed =
      typeof tolerance === 'number'
        ? tolerance * scale
        : 'absolute' in tolerance
          ? tolerance.absolute
          : tolerance.relative * scale
    const difference = Math.abs(got - expected)
    expect(
      difference <= allowed,
      `expected ${expected}, got ${got}: relative difference ${(difference / scale).toExponential(2)}, ` +
        `off by ${difference.toExponential(2)}, allowed ${allowed.toExponential(2)} (${why})`,
    ).toBe(true)
  })
}
