import { CalcError } from '../error'
import type { CountedArmDays } from './count-arm-days'
import { leastSquares } from './least-squares'

/** Cells times columns squared: some three seconds of work. */
const MOST_WORK = 1e8
/** At or below this share of the largest value a standard deviation is rounding, not error. */
const LEAST_ERROR = 1e-14

/**
 * What the error is taken from. `arm-days`: from how arm-day means scatter, so that an effect that changes by day is
 * part of it. `doughs`: from doughs as well, which is right for these mixing days only.
 */
export type ErrorUnit = 'arm-days' | 'doughs'

export type ArmDayFit = {
  /** Degrees of freedom of the error. */
  df: number
  /** For one dough's weight; null without degrees of freedom, 0 where no error was seen. */
  meanSquare: number | null
  /** Why there is no interval; null where there is one. */
  noInterval: 'no-residual-df' | 'zero-variance' | null
  /** Of each arm, with every day that counts at equal weight. */
  means: number[]
  /** Of the means, to be multiplied by the mean square. */
  meanCovariance: number[][]
  /** Of each arm after the control: arm minus control. */
  differences: number[]
  /** Of the differences, to be multiplied by the mean square. */
  differenceCovariance: number[][]
}

/**
 * Additive model of arm and mixing day on arm-day means, m = µ + arm + day + e with Var(e) = σ² / doughs kept:
 * weighted least squares, weights the doughs kept. Any cell may be missing, as countArmDays leaves it.
 * @param unit what the error is taken from
 * @param leastSize size below which the largest value does not count when error is told from rounding; 0 unless given
 * @throws CalcError 'out-of-range' with reason 'too-large' (10,000 cells take 100 arms and days together)
 * Source: Searle (1971), Linear Models, chapters 3 (weighted least squares) and 7.
 */
export function fitArmDays(
  { arms, blocks, cells }: CountedArmDays,
  q: { unit: ErrorUnit; leastSize?: number },
): ArmDayFit {
  const [laterBlocks, laterArms] = [blocks.slice(1), arms.slice(1)]
  const columns = 1 + laterBlocks.length + laterArms.length
  const work = cells.length * columns ** 2
  if (work > MOST_WORK)
    throw new CalcError('out-of-range', { field: 'rows', value: work, max: MOST_WORK, reason: 'too-large' })

  // about one value, so that a large common part costs no digits
  const origin = cells[0]!.mean
  const roots = cells.map(({ doughs }) => Math.sqrt(doughs))
  // control and arm stand together on every day that counts, so the columns are never made up of each other
  const fit = leastSquares({
    x: cells.map(({ arm, block }, i) =>
      [1, ...laterBlocks.map((each) => Number(each === block)), ...laterArms.map((each) => Number(each === arm))].map(
        (value) => value * roots[i]!,
      ),
    ),
    y: cells.map(({ mean }, i) => (mean - origin) * roots[i]!),
  })
  const within = q.unit === 'doughs'
  const df = fit.residualDf + (within ? sum(cells.map(({ doughs }) => doughs - 1)) : 0)
  const squares = fit.residualSumSquares + (within ? sum(cells.map(({ sumSquares }) => sumSquares)) : 0)
  const largest = cells.reduce((most, { mean }) => Math.max(most, Math.abs(mean)), q.leastSize ?? 0)
  const isSeen = df > 0 && Math.sqrt(squares / df) > LEAST_ERROR * largest

  const first = 1 + laterBlocks.length
  const meanOf = arms.map((arm) => [
    1,
    ...laterBlocks.map(() => 1 / blocks.length),
    ...laterArms.map((each) => Number(each === arm)),
  ])
  return {
    df,
    meanSquare: df === 0 ? null : isSeen ? squares / df : 0,
    noInterval: df === 0 ? 'no-residual-df' : isSeen ? null : 'zero-variance',
    means: meanOf.map((l) => origin + dot(l, fit.coefficients)),
    meanCovariance: meanOf.map((a) =>
      meanOf.map((b) =>
        dot(
          a,
          fit.unscaledCovariance.map((row) => dot(row, b)),
        ),
      ),
    ),
    differences: fit.coefficients.slice(first),
    differenceCovariance: fit.unscaledCovariance.slice(first).map((row) => row.slice(first)),
  }
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((total, value, i) => total + value * b[i]!, 0)
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0)
}
