import { expect, test } from 'vitest'
import { binomialTail } from '@/lib/calc/distributions/binomial-tail'
import type { RateFigures } from '@/lib/ops/published-checks'

declare module 'vitest' {
  interface TaskMeta {
    /** Figures of a simulated rate, for the table of `npm run checks -- long`. */
    rate?: RateFigures
  }
}

/** A true rate at the stated level gives more than the bound in one of so many checks. */
const FALSE_ALARM = 0.001

/** The most of n trials that go wrong, with all but one chance in a thousand, when each does with chance `rate`. */
export function mostWrong(n: number, rate: number): number {
  for (let count = 0; count < n; count++) {
    if (binomialTail({ k: count + 1, n, share: rate, tail: 'upper' }) < FALSE_ALARM) return count
  }
  return n
}

/** The fewest of n trials that go wrong, with all but one chance in a thousand, when each does with chance `rate`. */
export function leastWrong(n: number, rate: number): number {
  for (let count = 0; count < n; count++) {
    if (binomialTail({ k: count, n, share: rate, tail: 'lower' }) >= FALSE_ALARM) return count
  }
  return n
}

/**
 * One test that simulated trials go wrong no more often than stated, against the exact binomial bound of the stated
 * rate: beyond it the true rate is higher, but for one chance in a thousand.
 * @param isExact the true rate is the stated one, so that too few are a fault too: a method wider than it says
 */
export function rateCheck(q: {
  what: string
  stated: number
  isExact?: boolean
  count: () => { trials: number; wrong: number }
}): void {
  test(q.what, ({ task }) => {
    const { trials, wrong } = q.count()
    const most = mostWrong(trials, q.stated)
    task.meta.rate = { what: q.what, trials, stated: q.stated, wrong, most }
    expect(
      wrong,
      `${wrong} of ${trials} went wrong; at a rate of ${q.stated} no more than ${most} would`,
    ).toBeLessThanOrEqual(most)
    if (q.isExact !== true) return
    const least = leastWrong(trials, q.stated)
    expect(
      wrong,
      `${wrong} of ${trials} went wrong; at a rate of ${q.stated} no fewer than ${least} would`,
    ).toBeGreaterThanOrEqual(least)
  })
}
