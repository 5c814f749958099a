import { boundedLeastSquares, residualOf, type BoundedProblem } from './bounded-least-squares'
import { smallestChange } from './smallest-change'

export type HeldTotals = {
  /** Share of each total in each line that may move: totals in order of precedence × lines. */
  shares: readonly (readonly number[])[]
  /** Whether a line moves for a total; what it has of the others comes along and is made up for. */
  matters: readonly (readonly boolean[])[]
  /** What the arm has too much of each total before any line moves, g; below zero where it has too little. */
  broughtG: readonly number[]
  /** What misfits of each total are weighed against, g, > 0. */
  totalScaleG: readonly number[]
  /** Furthest that each line may go down (≤ 0) and up (≥ 0), g. */
  lowerG: readonly number[]
  upperG: readonly number[]
  /** What the change of each line is relative to, g, > 0. */
  lineScaleG: readonly number[]
  /** Off by this much, a total is met, g. */
  toleranceG: number
}

/** How much more a misfit of what can be met weighs than one of what cannot, while looking for the bounds that the latter ends at. */
const MET_FIRST = 1e4

/**
 * Changes of lines that hold totals, g. Each total that can be met together with those before it is met, by the lines
 * that matter to it; one that cannot is met as far as those lines go, and nothing is taken from the others for it. Of all
 * such changes the one with the smallest sum of squared relative changes is given. A line that matters to none stays.
 * A total counts as one that can be met only if it could be by the lines that matter to it alone: otherwise butter would
 * be exchanged for oil over the trace of salt in one of them.
 * @throws CalcError 'no-convergence'
 * Source: bounded least squares and smallest change as named in those files.
 */
export function holdTotals(q: HeldTotals): { changeG: number[]; isMet: boolean[] } {
  const carried = q.broughtG.map((_, k) => k).filter((k) => q.matters[k]?.some(Boolean))
  let met: readonly number[] = []
  if (reach(q, carried)) met = carried
  else for (const k of carried) if (reach(q, [...met, k])) met = [...met, k]

  let bounded = q
  for (const k of carried.filter((each) => !met.includes(each))) {
    const pinned = pinnedFor(bounded, met, k)
    if (pinned && reach(pinned, met)) bounded = pinned
  }
  const problem = problemOf(bounded, met, 'all')
  const x = smallestChange(problem, boundedLeastSquares(problem))
  return {
    changeG: x.map((value, j) => value * (q.lineScaleG[j] ?? 1)),
    isMet: q.broughtG.map((_, k) => met.includes(k)),
  }
}

/** Whether totals can be met together: by what matters to each alone, and with everything that lines bring along. */
function reach(q: HeldTotals, totals: readonly number[]): boolean {
  return (['what-matters', 'all'] as const).every((counted) => {
    const problem = problemOf(q, totals, counted)
    const residual = residualOf(problem, boundedLeastSquares(problem))
    return residual.every((off, i) => Math.abs(off) * (q.totalScaleG[totals[i] ?? 0] ?? 1) <= q.toleranceG / 10)
  })
}

/**
 * The question with the lines that matter to a total held at the bounds where they come nearest to it without loss to
 * those that are met; null where none of them gets to a bound.
 */
function pinnedFor(q: HeldTotals, met: readonly number[], k: number): HeldTotals | null {
  const problem = problemOf(q, [...met, k], 'what-matters')
  const weighted = (values: readonly number[]) => values.map((value, i) => (i < met.length ? MET_FIRST * value : value))
  const x = boundedLeastSquares({ ...problem, columns: problem.columns.map(weighted), b: weighted(problem.b) })
  const end = x.map((value, j) => {
    if (!q.matters[k]?.[j]) return null
    return value === problem.lower[j] ? (q.lowerG[j] ?? 0) : value === problem.upper[j] ? (q.upperG[j] ?? 0) : null
  })
  if (end.every((value) => value === null || value === 0)) return null
  return {
    ...q,
    lowerG: q.lowerG.map((value, j) => end[j] ?? value),
    upperG: q.upperG.map((value, j) => end[j] ?? value),
  }
}

/** Totals as rows on relative changes. Lines that matter to none of them stay where they are, or where they are held. */
function problemOf(q: HeldTotals, totals: readonly number[], counted: 'what-matters' | 'all'): BoundedProblem {
  const isFree = (j: number) => totals.some((k) => q.matters[k]?.[j])
  const bound = (valueG: number | undefined, j: number) =>
    isFree(j) || q.lowerG[j] === q.upperG[j] ? (valueG ?? 0) / (q.lineScaleG[j] ?? 1) : 0
  return {
    columns: q.lineScaleG.map((lineScale, j) =>
      totals.map((k) =>
        counted === 'all' || q.matters[k]?.[j] ? ((q.shares[k]?.[j] ?? 0) * lineScale) / (q.totalScaleG[k] ?? 1) : 0,
      ),
    ),
    b: totals.map((k) => -(q.broughtG[k] ?? 0) / (q.totalScaleG[k] ?? 1)),
    lower: q.lowerG.map(bound),
    upper: q.upperG.map(bound),
  }
}
