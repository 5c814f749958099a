import { publishedCheck, type PublishedCheck } from './published-check'

/** What the fixtures of reference cases have in common. */
export type PublishedCase = {
  title: string
  source: string
  computedWith: string
  checkedWith: string
  tolerance: { rel: number }
}

/** A figure, its expected value, ours, and a tolerance where it is not the case's own. */
export type Figure = [what: string, expected: number, got: () => number, tolerance?: number]

/** The figures of one reference case, each a check of its own. */
export function checkCase(
  c: PublishedCase,
  of: NonNullable<PublishedCheck['of']>,
  why: string,
  figures: readonly Figure[],
): void {
  for (const [what, expected, got, tolerance] of figures) {
    const status = `computed with ${c.computedWith}; second route: ${c.checkedWith}`
    publishedCheck({
      of,
      what: `${c.title}: ${what}`,
      source: c.source,
      status,
      expected,
      got,
      tolerance: tolerance ?? c.tolerance.rel,
      why,
    })
  }
}
