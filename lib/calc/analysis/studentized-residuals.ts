import { mustBeReading, mustBeWithin } from '../checks'
import { CalcError } from '../error'
import { tQuantile } from '../distributions/t-quantile'
import { tTail } from '../distributions/t-tail'
import { groupBy } from '../group-by'
import type { DoughRow } from './count-arm-days'
import { leastSquares } from './least-squares'

/** Doughs times columns squared: some three seconds of work. */
const MOST_WORK = 1e8
/** A dough whose leverage is 1 but for this much fits by itself, so that nothing judges it. */
const LEAST_FREEDOM = 1e-9
/** Distances that differ by no more than this part are a tie. */
const TIE = 1e-7
/** Below this share of the sum of squares, what is left without a dough is rounding. */
const LEAST_REST = 1e-12
/** At or below this share of the largest value a standard deviation is rounding. */
const LEAST_VARIATION = 1e-14

export type JudgedDough = {
  /** Index of its row. */
  row: number
  residual: number
  leverage: number
  /** Null where it cannot be judged: its row fits by itself. */
  t: number | null
  /** Two-sided, by Bonferroni over the doughs judged. */
  pAdjusted: number | null
}

export type StudentizedResiduals = {
  /** Degrees of freedom of the fit, and of each test. */
  errorDf: number
  testDf: number
  judged: number
  /** Null where nothing can be told. */
  criticalT: number | null
  /** In the order of the rows; none where nothing can be told. */
  doughs: JudgedDough[]
  /** Rows of those that stand out; several when they tie. */
  suspects: number[]
  outcome: 'this-dough' | 'one-of-these' | 'none-stands-out' | 'cannot-be-told'
}

/**
 * Doughs that stand out from what arm and mixing day lead one to expect: externally studentized residuals of
 * least squares on all doughs kept, or residuals against the bakery's own variation; the largest, by Bonferroni.
 * With a control and one arm, one dough each a day, residuals come in pairs, and the pair is named.
 * It flags; what to do about a flagged dough is a person's decision.
 * @param rows a row a dough, one or more kept, without `y` when it was lost; values up to ±1e100
 * @param alpha 0.0001 to 0.5; @param own SD of doughs of one day, > 0, and its degrees of freedom, 1 to 1e6
 * @throws CalcError 'empty' | 'not-finite' | 'out-of-range' (reason 'too-large': 10,000 doughs take 100 arms and days)
 * Source: Cook & Weisberg (1982), Residuals and Influence in Regression, section 2.2.
 */
export function studentizedResiduals(q: {
  rows: readonly DoughRow[]
  alpha: number
  own?: { sd: number; df: number }
}): StudentizedResiduals {
  const alpha = mustBeWithin('alpha', q.alpha, { min: 0.0001, max: 0.5 })
  if (q.own) {
    mustBeWithin('own.sd', q.own.sd, { over: 0 })
    mustBeWithin('own.df', q.own.df, { min: 1, max: 1e6 })
  }
  const kept = q.rows.flatMap(({ arm, block, y }, row) =>
    y === undefined ? [] : [{ arm, block, row, y: mustBeReading(`rows[${row}].y`, y) }],
  )
  if (kept.length === 0) throw new CalcError('empty', { field: 'rows', value: 0, min: 1 })
  const columns = new Set(kept.map(({ arm }) => arm)).size + new Set(kept.map(({ block }) => block)).size - 1
  const work = kept.length * columns ** 2
  if (work > MOST_WORK)
    throw new CalcError('out-of-range', { field: 'rows', value: work, max: MOST_WORK, reason: 'too-large' })
  const x = columnsOf(kept)
  const origin = kept[0]!.y
  const y = kept.map((dough) => dough.y - origin)
  const fit = leastSquares({ x, y })
  const errorDf = fit.residualDf
  const testDf = q.own ? q.own.df : errorDf - 1
  const nothing = { errorDf, testDf, judged: 0, criticalT: null, doughs: [], suspects: [] }
  if (errorDf < 1 || testDf < 1) return { ...nothing, outcome: 'cannot-be-told' }

  const residuals = x.map((row, i) => y[i]! - dot(row, fit.coefficients))
  const leverages = x.map((row) =>
    dot(
      row,
      fit.unscaledCovariance.map((each) => dot(each, row)),
    ),
  )
  const largest = kept.reduce((most, dough) => Math.max(most, Math.abs(dough.y)), 0)
  const isExact = Math.sqrt(fit.residualSumSquares / errorDf) <= LEAST_VARIATION * largest
  const distances = residuals.map((residual, i) => {
    const freedom = 1 - leverages[i]!
    if (freedom < LEAST_FREEDOM) return null
    if (isExact) return 0
    if (q.own) return residual / (q.own.sd * Math.sqrt(freedom))
    const rest = fit.residualSumSquares - (residual * residual) / freedom
    const variance = Math.max(rest, LEAST_REST * fit.residualSumSquares) / testDf
    return residual / Math.sqrt(variance * freedom)
  })
  const judged = distances.filter((t) => t !== null).length
  const pOf = (t: number) => Math.min(1, 2 * judged * tTail({ t: Math.abs(t), df: testDf, tail: 'upper' }))
  const farthest = Math.max(...distances.map((t) => Math.abs(t ?? 0)))
  const suspects =
    pOf(farthest) < alpha
      ? kept.flatMap(({ row }, i) => (Math.abs(distances[i] ?? 0) >= farthest * (1 - TIE) ? [row] : []))
      : []
  return {
    errorDf,
    testDf,
    judged,
    criticalT: tQuantile({ p: alpha / (2 * judged), df: testDf, tail: 'upper' }),
    doughs: kept.map(({ row }, i) => {
      const t = distances[i]!
      return { row, residual: residuals[i]!, leverage: leverages[i]!, t, pAdjusted: t === null ? null : pOf(t) }
    }),
    suspects,
    outcome: suspects.length === 0 ? 'none-stands-out' : suspects.length === 1 ? 'this-dough' : 'one-of-these',
  }
}

/** A column an arm, and one a day but for the first day of each part that hangs together: full rank, same fit. */
function columnsOf(kept: readonly { arm: string; block: string }[]): number[][] {
  const arms = [...new Set(kept.map(({ arm }) => arm))]
  const days = groupBy(kept, ({ block }) => block)
  const reached = new Set<string>()
  const laterDays: string[] = []
  for (const start of days.keys()) {
    if (reached.has(start)) continue
    reached.add(start)
    const next = [start]
    for (let block = next.pop(); block !== undefined; block = next.pop()) {
      const armsOfDay = new Set(days.get(block)!.map(({ arm }) => arm))
      for (const [other, doughs] of days) {
        if (reached.has(other) || !doughs.some(({ arm }) => armsOfDay.has(arm))) continue
        reached.add(other)
        laterDays.push(other)
        next.push(other)
      }
    }
  }
  return kept.map(({ arm, block }) => [
    ...arms.map((each) => Number(each === arm)),
    ...laterDays.map((each) => Number(each === block)),
  ])
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((total, value, i) => total + value * b[i]!, 0)
}
