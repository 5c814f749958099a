import { mustBeWithin } from '../checks'
import { CalcError } from '../error'
import { type CountedArmDays, type DoughRow, countArmDays } from './count-arm-days'
import { leastSquares } from './least-squares'
import { pooledWithAssumed } from './pooled-with-assumed'
import { type Component, varianceComponent } from './variance-component'

export type ArmByDaySpread = Component & {
  /** So many of the trials say something of it. */
  trials: number
}

/** Cells times columns squared: some three seconds of work. */
const MOST_WORK = 1e8
/** At or below this share of the largest value a spread is rounding, and counts as zero. */
const LEAST_SPREAD = 1e-12

/** A trial of the product: its doughs, the control first among the arms, and what is assumed of doughs of one day. */
export type SpreadTrial = { rows: readonly DoughRow[]; arms: readonly string[]; assumedDoughSd: number }

/**
 * How much the difference between kinds of dough changes from mixing day to mixing day, as an SD of an arm's own mean
 * of a day: what arm-day means scatter about the additive model of arm and day, pooled over trials, less what their
 * doughs bring to that. Doughs of one arm and day tell their own spread; until they have 8 degrees of freedom it is
 * pooled with what is assumed. Degrees of freedom are those of the difference of two mean squares, so that a spread that
 * doughs explain has next to none, and one at zero none at all.
 * @param trials none or more; values on the scale of the verdict; `assumedDoughSd` of a dough's value, ≥ 0
 * @throws CalcError as countArmDays; 'out-of-range' with reason 'too-large'
 * Source: Searle (1971), Linear Models, chapters 9 and 10 (equating squares to their expectations); degrees of freedom
 * by Satterthwaite (1946), Biometrics Bulletin 2.
 */
export function armByDaySpread(trials: readonly SpreadTrial[]): ArmByDaySpread {
  const counted = trials.map(({ assumedDoughSd, ...doughs }, i) => ({
    assumed: mustBeWithin(`trials[${i}].assumedDoughSd`, assumedDoughSd, { min: 0 }) ** 2,
    squares: squaresOf(countArmDays(doughs)),
  }))
  const df = sum(counted.map(({ squares }) => squares.df))
  const telling = counted.filter(({ squares }) => squares.df > 0).length
  if (df === 0) return { ...varianceComponent(0, 0), trials: telling }
  const withinDf = sum(counted.map(({ squares }) => squares.withinDf))
  const within = withinDf === 0 ? 0 : sum(counted.map(({ squares }) => squares.within)) / withinDf
  const ofDoughs = counted.map(({ assumed, squares }) => {
    const dough = pooledWithAssumed({ variance: within, df: withinDf }, assumed)
    return { part: (squares.doughShare * dough.variance) / df, df: dough.df }
  })
  const meanSquare = sum(counted.map(({ squares }) => squares.residual)) / df
  const brought = sum(ofDoughs.map(({ part }) => part))
  const variance = meanSquare - brought
  const largest = counted.reduce((most, { squares }) => Math.max(most, squares.largest), 0)
  if (variance <= (LEAST_SPREAD * largest) ** 2) return { sd: 0, df: 0, heldAtZero: true, trials: telling }
  const doughDf = ofDoughs[0]!.df
  const ownDf = variance ** 2 / (meanSquare ** 2 / df + brought ** 2 / doughDf)
  return { ...varianceComponent(variance, ownDf), trials: telling }
}

type Squares = {
  /** Of arm-day means about the additive model, with its degrees of freedom. */
  residual: number
  df: number
  /** What a variance of doughs adds to the expected residual, as a share of it. */
  doughShare: number
  /** Of doughs about their mean of arm and day. */
  within: number
  withinDf: number
  /** Largest size of a mean. */
  largest: number
}

/** Unweighted: E(residual) = df σ²(arm by day) + σ²(dough) Σ (1 − leverage) / doughs. */
function squaresOf({ arms, blocks, cells }: CountedArmDays): Squares {
  const columns = arms.length + blocks.length - 1
  const work = cells.length * columns ** 2
  if (work > MOST_WORK)
    throw new CalcError('out-of-range', { field: 'rows', value: work, max: MOST_WORK, reason: 'too-large' })
  const x = cells.map(({ arm, block }) => [
    ...arms.map((each) => Number(each === arm)),
    ...blocks.slice(1).map((each) => Number(each === block)),
  ])
  const origin = cells[0]!.mean
  const fit = leastSquares({ x, y: cells.map(({ mean }) => mean - origin) })
  const leverages = x.map((row) =>
    dot(
      row,
      fit.unscaledCovariance.map((each) => dot(each, row)),
    ),
  )
  return {
    residual: fit.residualSumSquares,
    df: fit.residualDf,
    doughShare: fit.residualDf === 0 ? 0 : sum(cells.map(({ doughs }, i) => (1 - leverages[i]!) / doughs)),
    within: sum(cells.map(({ sumSquares }) => sumSquares)),
    withinDf: sum(cells.map(({ doughs }) => doughs - 1)),
    largest: cells.reduce((most, { mean }) => Math.max(most, Math.abs(mean)), 0),
  }
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((total, value, i) => total + value * b[i]!, 0)
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0)
}
