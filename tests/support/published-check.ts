import { expect, test } from 'vitest'
import type { CalcId } from '@/lib/calc/catalogue'
import type { CheckFigures } from '@/lib/ops/published-checks'

declare module 'vitest' {
  interface TaskMeta {
    /** Figures of a published check, for the table of `npm run checks`. */
    check?: CheckFigures
  }
}

type Named = {
  /** Number of the fact, where it has one. */
  id?: string
  /** Calculations of the catalogue whose answer is checked. */
  of?: readonly CalcId[]
  what: string
  /** Author, title, year, section. All checks of a file are of one source, which the file is named for. */
  source: string
  /** 'published', 'published inputs', 'common practice, no source', 'from memory', or the program it was computed with. */
  status: string
}

type OfNumber = {
  expected: number
  got: () => number
  /** A bare number is relative, and absolute where the expected value is 0. */
  tolerance: number | { relative: number } | { absolute: number }
  /** Why this tolerance and no other. */
  why: string
}

/** An answer in a word: a verdict, a finding. It is that word or it is not. */
type OfWord = { expected: string; got: () => string | undefined }

export type PublishedCheck = Named & (OfNumber | OfWord)

/** One test of a value against an outside source; the message shows how far off the result is. */
export function publishedCheck(check: PublishedCheck): void {
  const { id = '', of = [], what, source, status } = check
  test(`${id} ${what} (${source}; ${status})`.trim(), ({ task }) => {
    const figures: CheckFigures = {
      id,
      of: [...of],
      what,
      source,
      status,
      expected: check.expected,
      got: null,
      difference: null,
    }
    task.meta.check = figures
    if (isOfWord(check)) {
      figures.got = check.got() ?? null
      expect(figures.got).toBe(check.expected)
      return
    }
    const { expected, tolerance, why } = check
    const got = check.got()
    const scale = expected === 0 ? 1 : Math.abs(expected)
    const difference = Math.abs(got - expected)
    figures.got = got
    figures.difference = difference / scale
    const allowed =
      typeof tolerance === 'number'
        ? tolerance * scale
        : 'absolute' in tolerance
          ? tolerance.absolute
          : tolerance.relative * scale
    expect(
      difference <= allowed,
      `expected ${expected}, got ${got}: relative difference ${(difference / scale).toExponential(2)}, ` +
        `off by ${difference.toExponential(2)}, allowed ${allowed.toExponential(2)} (${why})`,
    ).toBe(true)
  })
}

function isOfWord(check: PublishedCheck): check is Named & OfWord {
  return typeof check.expected === 'string'
}
