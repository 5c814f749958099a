import { expect, test } from 'vitest'

export type PublishedCheck = {
  id: string
  what: string
  /** Author, title, year, section. */
  source: string
  status: 'published' | 'published inputs' | 'common practice, no source' | 'from memory'
  expected: number
  got: () => number
  tolerance: { relative: number } | { absolute: number }
  /** Why this tolerance and no other. */
  why: string
}

/** One test per published figure; the message tells the source and how far off the result is. */
export function publishedCheck(check: PublishedCheck): void {
  test(`${check.id} ${check.what} [${check.status}]`, () => {
    const got = check.got()
    const { tolerance, expected } = check
    const allowed = 'absolute' in tolerance ? tolerance.absolute : tolerance.relative * Math.abs(expected)
    const relative = (got - expected) / (expected === 0 ? 1 : Math.abs(expected))
    expect(
      Math.abs(got - expected),
      `${check.source}: expected ${expected}, got ${got}, relative difference ${relative.toExponential(3)}; allowed ${allowed} because ${check.why}`,
    ).toBeLessThanOrEqual(allowed)
  })
}
