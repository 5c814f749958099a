import type { ErrorUnit } from '../analysis/fit-arm-days'
import { gainVerdict, type GoodDirection } from '../analysis/gain-verdict'
import { mustBeWhole, mustBeWithin, mustHaveAtLeast } from '../checks'
import { dunnettLoadings } from '../distributions/dunnett-loadings'
import { dunnettQuantile } from '../distributions/dunnett-quantile'
import { tQuantile } from '../distributions/t-quantile'
import { CalcError } from '../error'
import { normalDeviate } from '../random/normal-deviate'
import { seededRandom } from '../random/seeded-random'

export type ArmDayPower = {
  residualDf: number
  criticalValue: number
  arms: {
    trueDifference: number
    /** Chance of 'better', with the arm's own days showing it too, and its Monte Carlo standard error. */
    power: number
    powerSe: number
    /** Chance that the pooled error alone shows it. */
    pooledPower: number
  }[]
}

/**
 * Chance of 'better' by the rule of judgeArmDays, by simulation of arm-day means in complete blocks with equally many
 * doughs of every arm: Dunnett's limits on the pooled error above zero, the estimate at the margin or beyond, and the
 * paired limits of the arm's own days above zero too. More doughs a day lower the spread of doughs and not that of the
 * effect by day. With doughs as the unit the error is theirs, own days are not asked, and the difference is that of the
 * days baked.
 * @param days mixing days, whole, 2 to 100; @param doughs of an arm a day, 1 to 20; @param loaves a dough, 1 to 1000
 * @param unit what the error is taken from, as in judgeArmDays
 * @param spread SDs ≥ 0 on the scale of the verdict: of the effect by day, of doughs of one day, of loaves; not all 0
 * @param trueDifferences arm minus control, one per test arm, 1 to 12; @param margin above and below the control, > 0
 * @param confidence joint, 0.5 to 0.9999; @param runs 100 to 1e6
 * @throws CalcError 'not-finite' | 'out-of-range' | 'empty'; 'not-possible' with reason 'no-residual-df' on one day, for
 *   doughs only with one dough of each
 * Source: normal theory of the additive model (Searle 1971, Linear Models); rule as in judgeArmDays.
 */
export function armDayPower(q: {
  seed: string
  runs: number
  days: number
  doughs: number
  loaves: number
  unit: ErrorUnit
  spread: { armByDaySd: number; doughSd: number; loafSd: number }
  trueDifferences: readonly number[]
  margin: { more: number; less: number }
  goodDirection: GoodDirection
  confidence: number
}): ArmDayPower {
  const runs = mustBeWhole('runs', q.runs, { min: 100, max: 1e6 })
  const days = mustBeWhole('days', q.days, { min: 1, max: 100 })
  const doughs = mustBeWhole('doughs', q.doughs, { min: 1, max: 20 })
  const loaves = mustBeWhole('loaves', q.loaves, { min: 1, max: 1000 })
  mustHaveAtLeast('trueDifferences', q.trueDifferences, 1)
  const k = mustBeWithin('trueDifferences.length', q.trueDifferences.length, { max: 12 })
  q.trueDifferences.forEach((value, i) => mustBeWithin(`trueDifferences[${i}]`, value))
  const confidence = mustBeWithin('confidence', q.confidence, { min: 0.5, max: 0.9999 })
  const variance =
    mustBeWithin('spread.armByDaySd', q.spread.armByDaySd, { min: 0 }) ** 2 +
    mustBeWithin('spread.doughSd', q.spread.doughSd, { min: 0 }) ** 2 / doughs +
    mustBeWithin('spread.loafSd', q.spread.loafSd, { min: 0 }) ** 2 / (doughs * loaves)
  mustBeWithin('spread', variance, { over: 0 })
  const isByDough = q.unit === 'doughs'
  const residualDf = k * (days - 1) + (isByDough ? (k + 1) * days * (doughs - 1) : 0)
  if (residualDf < 1) throw new CalcError('not-possible', { field: 'days', value: days, reason: 'no-residual-df' })
  const loadings = dunnettLoadings({ controlCount: 1, armCounts: q.trueDifferences.map(() => 1) })
  const criticalValue = dunnettQuantile({ p: 1 - confidence, df: residualDf, loadings, sides: 'two' })
  const ownT = isByDough ? null : tQuantile({ p: (1 - confidence) / 2, df: days - 1, tail: 'upper' })
  const [gain, loss] = q.goodDirection === 'larger' ? [q.margin.more, q.margin.less] : [q.margin.less, q.margin.more]
  mustBeWithin('margin', Math.min(gain, loss), { over: 0 })

  const sd = Math.sqrt(variance)
  // Of doughs about their mean of an arm and day, as it adds to the error of arm-day means.
  const doughSd = Math.sqrt(q.spread.doughSd ** 2 + q.spread.loafSd ** 2 / loaves)
  const withinDf = isByDough ? (k + 1) * days * (doughs - 1) : 0
  const random = seededRandom(q.seed)
  const better = q.trueDifferences.map(() => ({ whole: 0, pooled: 0 }))
  for (let run = 0; run < runs; run++) {
    const cells = [0, ...q.trueDifferences].map((mean) =>
      Array.from({ length: days }, () => mean + sd * normalDeviate(random)),
    )
    const [control, ...arms] = cells
    const within = Array.from({ length: withinDf }, () => doughSd * normalDeviate(random))
    const half = criticalValue * Math.sqrt(meanSquareOf(cells, within, doughs)) * Math.sqrt(2 / days)
    arms.forEach((cell, i) => {
      const differences = cell.map((value, day) => value - control![day]!)
      const estimate = meanOf(differences)
      const got = gainVerdict({
        estimate,
        low: estimate - half,
        high: estimate + half,
        worthwhile: gain,
        loss,
        goodDirection: q.goodDirection,
      })
      if (got?.verdict !== 'better') return
      better[i]!.pooled += 1
      const squares = differences.reduce((sum, value) => sum + (value - estimate) ** 2, 0)
      if (ownT === null || Math.abs(estimate) > ownT * Math.sqrt(squares / (days - 1) / days)) better[i]!.whole += 1
    })
  }
  return {
    residualDf,
    criticalValue,
    arms: q.trueDifferences.map((trueDifference, i) => {
      const { whole, pooled } = better[i]!
      const power = whole / runs
      const inside = Math.min(1 - 1 / runs, Math.max(1 / runs, power))
      return {
        trueDifference,
        power,
        powerSe: Math.sqrt((inside * (1 - inside)) / runs),
        pooledPower: pooled / runs,
      }
    }),
  }
}

/**
 * Error of an arm-day mean by the additive model of arm and day, every cell there.
 * @param within deviates of doughs about their cell's mean, as many as they have degrees of freedom; none where arm-day
 *   means are the unit
 */
function meanSquareOf(cells: readonly (readonly number[])[], within: readonly number[], doughs: number): number {
  const days = cells[0]!.length
  const armMeans = cells.map(meanOf)
  const grand = meanOf(armMeans)
  const dayMeans = cells[0]!.map((_, day) => meanOf(cells.map((arm) => arm[day]!)))
  const squares = cells.reduce(
    (sum, arm, i) =>
      sum + arm.reduce((own, value, day) => own + (value - armMeans[i]! - dayMeans[day]! + grand) ** 2, 0),
    0,
  )
  // A dough's squares are as many times those of the mean of its arm and day as that has doughs.
  const ofDoughs = within.reduce((sum, value) => sum + value ** 2, 0) / doughs
  return (squares + ofDoughs) / ((cells.length - 1) * (days - 1) + within.length)
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length
}
