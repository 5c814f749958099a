import { mustBeWithin, mustHaveAtLeast, mustMatchLength, mustVary } from '../checks'
import { tQuantile } from '../distributions/t-quantile'
import { type ValueSummary, summariseValues } from './summarise-values'

export type RatioMethod = 'fieller' | 'delta-log' | 'log-means' | 'paired-log'

export type RatioToControl = {
  method: RatioMethod
  /** Treated over control: of arithmetic means, or of geometric means for `log-means` and `paired-log`. */
  ratio: number
  /** Null where the interval is not bounded. */
  low: number | null
  high: number | null
  /** 100 (ratio − 1), and its limits. */
  pct: number
  lowPct: number | null
  highPct: number | null
  /** False where the control's mean cannot be told from zero, so that any ratio may be. */
  bounded: boolean
  df: number
  confidence: number
  /** Fieller's g, t² var(control mean) / control mean²; bounded below 1. Null for the other methods. */
  g: number | null
  /** Standard error of the log of the ratio; null for `fieller`. */
  seLog: number | null
}

/**
 * Ratio of a treated arm to the control, with its interval.
 * @param method `fieller`: exact for normal values with one variance; `delta-log`: the same by the log's slope;
 * `log-means`: on logarithms, for spread that grows with the mean; `paired-log`: the same, values in pairs by place
 * @param control, treated two values or more each; control mean > 0 for `fieller`, both means > 0 for `delta-log`,
 * all values > 0 on logarithms
 * @param confidence 0.5 to 0.9999
 * @throws CalcError 'empty' | 'not-finite' | 'out-of-range'; 'wrong-shape' when pairs are not complete;
 * 'not-possible' with reason 'zero-variance'
 * Source: Fieller (1954), JRSS B 16; Cox (1990), "Fieller's theorem, the likelihood and the delta method", Biometrics 46.
 * @example ratioToControl({ method: 'log-means', control: [1, 2, 4], treated: [2, 4, 8], confidence: 0.95 }).ratio // 2
 */
export function ratioToControl(q: {
  method: RatioMethod
  control: readonly number[]
  treated: readonly number[]
  confidence: number
}): RatioToControl {
  const confidence = mustBeWithin('confidence', q.confidence, { min: 0.5, max: 0.9999 })
  mustHaveAtLeast('control', q.control, 2)
  mustHaveAtLeast('treated', q.treated, 2)
  const tOf = (df: number) => tQuantile({ p: (1 - confidence) / 2, df, tail: 'upper' })
  const answer = (
    ratio: number,
    limits: [number, number] | null,
    df: number,
    g: number | null,
    seLog: number | null,
  ): RatioToControl => {
    mustBeWithin('ratio', ratio)
    const [low, high] = limits?.map((limit) => mustBeWithin('limits', limit)) ?? []
    const pct = (value: number | undefined) => (value === undefined ? null : 100 * (value - 1))
    const shown = {
      ratio,
      low: low ?? null,
      high: high ?? null,
      pct: 100 * (ratio - 1),
      lowPct: pct(low),
      highPct: pct(high),
    }
    return { method: q.method, ...shown, bounded: limits !== null, df, confidence, g, seLog }
  }
  const onLogs = (logRatio: number, seLog: number, df: number) => {
    const half = tOf(df) * seLog
    return answer(Math.exp(logRatio), [Math.exp(logRatio - half), Math.exp(logRatio + half)], df, null, seLog)
  }

  if (q.method === 'paired-log') {
    mustMatchLength('treated', q.treated, q.control.length)
    const control = logs('control', q.control)
    const pairs = summariseValues(
      'treated',
      logs('treated', q.treated).map((value, i) => value - control[i]!),
      0,
    )
    const sd = mustVary('treated', Math.sqrt(pairs.sumSquares / (pairs.count - 1)), 1)
    return onLogs(pairs.mean, sd / Math.sqrt(pairs.count), pairs.count - 1)
  }
  const log = q.method === 'log-means'
  const [controls, treateds] = log ? [logs('control', q.control), logs('treated', q.treated)] : [q.control, q.treated]
  const control = summariseValues('control', controls)
  const treated = summariseValues('treated', treateds)
  const df = control.count + treated.count - 2
  const largest = log ? 1 : [...controls, ...treateds].reduce((most, value) => Math.max(most, Math.abs(value)), 0)
  const sd = mustVary('control', Math.sqrt((control.sumSquares + treated.sumSquares) / df), largest)
  if (log) return onLogs(treated.mean - control.mean, sd * Math.sqrt(1 / control.count + 1 / treated.count), df)

  mustBeWithin('controlMean', control.mean, { over: 0 })
  if (q.method === 'delta-log') {
    mustBeWithin('treatedMean', treated.mean, { over: 0 })
    const seLog = Math.hypot(relativeSe(sd, control), relativeSe(sd, treated))
    return onLogs(Math.log(treated.mean / control.mean), seLog, df)
  }
  const ratio = treated.mean / control.mean
  const t = tOf(df)
  const g = (t * relativeSe(sd, control)) ** 2
  if (g >= 1) return answer(ratio, null, df, g, null)
  const [seControl, seTreated] = [sd / Math.sqrt(control.count), sd / Math.sqrt(treated.count)]
  const half = (t / control.mean) * Math.hypot(seTreated * Math.sqrt(1 - g), ratio * seControl)
  return answer(ratio, [(ratio - half) / (1 - g), (ratio + half) / (1 - g)], df, g, null)
}

function relativeSe(sd: number, of: ValueSummary): number {
  return sd / Math.sqrt(of.count) / of.mean
}

function logs(field: string, values: readonly number[]): number[] {
  return values.map((value, i) => Math.log(mustBeWithin(`${field}[${i}]`, value, { over: 0 })))
}
