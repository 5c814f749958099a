import { mustBeWithin } from '../checks'
import type { DoughRow } from './count-arm-days'
import { type ArmDayJudgement, type JudgedArm, judgeArmDays } from './judge-arm-days'

/** An arm's ratio to the control and its limits; `se` and `own` as on the logs, `t` and p as there. */
export type JudgedRatio = Omit<JudgedArm, 'estimate' | 'own'> & {
  ratio: number
  own: { days: number; df: number; ratio: number; low: number | null; high: number | null } | null
}

export type LogRatioJudgement = Omit<ArmDayJudgement, 'comparisons'> & { comparisons: JudgedRatio[] }

/**
 * Arms against the control in %, as ratios: the arm-day model on natural logarithms of doughs, an arm-day value being
 * the mean of its doughs' logs. A margin of m % stays a ratio, 1 − m to 1 + m, which is not symmetrical on logs.
 * @param rows values > 0 of a measure with a true zero; @param marginPct over 0, below 100; the rest as in judgeArmDays
 * @returns ratios; means are geometric ones, the mean square is that of logs
 * @throws CalcError as judgeArmDays; 'out-of-range' for a value that is not above 0
 * Source: as judgeArmDays; logarithms for ratios are common practice, no source.
 */
export function judgeLogRatios(
  q: Omit<Parameters<typeof judgeArmDays>[0], 'margin' | 'leastSize'> & { marginPct: number },
): LogRatioJudgement {
  const margin = mustBeWithin('marginPct', q.marginPct, { over: 0, under: 100 }) / 100
  const rows = q.rows.map(({ y, ...row }, i): DoughRow => {
    if (y === undefined) return row
    return { ...row, y: Math.log(mustBeWithin(`rows[${i}].y`, y, { over: 0 })) }
  })
  // rounding of a logarithm is told against 1: it is of that size however near the value is to 1
  const onLogs = judgeArmDays({
    ...q,
    rows,
    margin: { more: Math.log1p(margin), less: -Math.log1p(-margin) },
    leastSize: 1,
  })
  const ratioOf = (log: number | null) => (log === null ? null : Math.exp(log))
  return {
    ...onLogs,
    means: onLogs.means.map((one) => ({ ...one, mean: Math.exp(one.mean) })),
    comparisons: onLogs.comparisons.map(({ estimate, own, ...one }) => ({
      ...one,
      ratio: Math.exp(estimate),
      low: ratioOf(one.low),
      high: ratioOf(one.high),
      otherLimit: ratioOf(one.otherLimit),
      own: own && {
        days: own.days,
        df: own.df,
        ratio: Math.exp(own.mean),
        low: ratioOf(own.low),
        high: ratioOf(own.high),
      },
    })),
  }
}
