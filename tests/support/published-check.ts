import { expect, test } from 'vitest'

export type PublishedCheck = {
  what: string
  source: string
  /** How sure the expected value is: read in the source, computed with a named program, quoted from memory. */
  status: string
  expected: number
  got: () => number
  /** Relative; absolute where the expected value is 0. */
  tolerance: number
  /** Why this tolerance. */
  why: string
}

/** One test of a value against an outside source; the message shows the relative difference. */
export function publishedCheck(check: PublishedCheck): void {
  test(`${check.what} (${check.source}; ${check.status})`, () => {
    const got = check.got()
    const scale = check.expected === 0 ? 1 : Math.abs(check.expected)
    const difference = Math.abs(got - check.expected) / scale
    expect(
      difference <= check.tolerance,
      `expected ${check.expected}, got ${got}: differs by ${difference.toExponential(2)}, ` +
        `tolerance ${check.tolerance} (${check.why})`,
    ).toBe(true)
  })
}
