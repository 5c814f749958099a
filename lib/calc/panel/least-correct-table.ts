import { mustBeWhole, mustHaveAtLeast } from '../checks'
import { CalcError } from '../error'
import { MOST_TASTERS } from './constants'
import { type LeastCorrect, leastCorrect } from './least-correct'
import type { DifferenceTest } from './types'

const MOST_ROWS = 2000

/**
 * Fewest right answers for each number of tasters and each level, a row each.
 * @param fromTasters, toTasters whole, 1 to 10 000, in this order; at most 2000 rows in all
 * @param alphas one or more levels, 1e-6 ≤ α ≤ 0.5
 * @throws CalcError 'empty' | 'not-finite' | 'out-of-range', with reason 'range-reversed' or 'too-many-rows'
 * Source: as leastCorrect.
 * @example leastCorrectTable({ test: 'paired', fromTasters: 5, toTasters: 6, alphas: [0.05] }) // 5 of 5, 6 of 6
 */
export function leastCorrectTable(q: {
  test: DifferenceTest
  fromTasters: number
  toTasters: number
  alphas: readonly number[]
}): ({ tasters: number; alpha: number } & LeastCorrect)[] {
  const from = mustBeWhole('fromTasters', q.fromTasters, { min: 1, max: MOST_TASTERS })
  const to = mustBeWhole('toTasters', q.toTasters, { min: 1, max: MOST_TASTERS })
  mustHaveAtLeast('alphas', q.alphas, 1)
  if (to < from)
    throw new CalcError('out-of-range', { field: 'toTasters', value: to, min: from, reason: 'range-reversed' })
  const rows = (to - from + 1) * q.alphas.length
  if (rows > MOST_ROWS)
    throw new CalcError('out-of-range', { field: 'toTasters', value: rows, max: MOST_ROWS, reason: 'too-many-rows' })
  return Array.from({ length: to - from + 1 }, (_, i) => from + i).flatMap((tasters) =>
    q.alphas.map((alpha) => ({ tasters, alpha, ...leastCorrect({ test: q.test, tasters, alpha }) })),
  )
}
