import { mustHaveAtLeast, mustMatchLength, mustVary } from '../checks'
import { tTail } from '../distributions/t-tail'
import { type Interval, meanInterval } from './mean-interval'
import { summariseValues } from './summarise-values'

export type TTestKind = 'student' | 'welch' | 'paired'

export type TTest = {
  method: 'student-t' | 'welch-t' | 'paired-t'
  controlMean: number
  treatedMean: number
  /** Treated minus control. */
  difference: number
  t: number
  /** Two-sided. */
  p: number
  confidence: number
} & Interval

/**
 * t test of one treated arm against a control: difference, its interval and two-sided p.
 * @param kind `student`: both vary alike; `welch`: each with its own variance; `paired`: values belong together by place
 * @param control, treated two values or more each, one per experimental unit, in the measure's own unit
 * @param confidence of the interval, 0.5 to 0.9999
 * @throws CalcError 'empty' | 'not-finite' | 'out-of-range'; 'wrong-shape' when pairs are not complete;
 * 'not-possible' with reason 'zero-variance'
 * Source: Student (1908), Biometrika 6; Welch (1947), Biometrika 34 (degrees of freedom after Satterthwaite 1946).
 * @example tTest({ kind: 'student', control: [1, 3], treated: [5, 7], confidence: 0.95 }).difference // 4
 */
export function tTest(q: {
  kind: TTestKind
  control: readonly number[]
  treated: readonly number[]
  confidence: number
}): TTest {
  mustHaveAtLeast('control', q.control, 2)
  mustHaveAtLeast('treated', q.treated, 2)
  const origin = q.control[0]!
  const control = summariseValues('control', q.control, origin)
  const treated = summariseValues('treated', q.treated, origin)
  const largest = [...q.control, ...q.treated].reduce((most, value) => Math.max(most, Math.abs(value)), 0)
  const means = { controlMean: control.mean, treatedMean: treated.mean, confidence: q.confidence }
  const tested = (method: TTest['method'], difference: number, se: number, df: number): TTest => {
    const t = difference / se
    const p = Math.min(1, 2 * tTail({ t: Math.abs(t), df, tail: 'upper' }))
    return {
      method,
      ...means,
      difference,
      t,
      p,
      ...meanInterval({ estimate: difference, se, df, confidence: q.confidence }),
    }
  }

  if (q.kind === 'paired') {
    mustMatchLength('treated', q.treated, q.control.length)
    const pairs = summariseValues(
      'treated',
      q.treated.map((value, i) => value - q.control[i]!),
      0,
    )
    const sd = mustVary('treated', Math.sqrt(pairs.sumSquares / (pairs.count - 1)), largest)
    return tested('paired-t', pairs.mean, sd / Math.sqrt(pairs.count), pairs.count - 1)
  }
  const difference = treated.offset - control.offset
  const [dfControl, dfTreated] = [control.count - 1, treated.count - 1]
  if (q.kind === 'student') {
    const df = dfControl + dfTreated
    const sd = mustVary('control', Math.sqrt((control.sumSquares + treated.sumSquares) / df), largest)
    return tested('student-t', difference, sd * Math.sqrt(1 / control.count + 1 / treated.count), df)
  }
  const a = control.sumSquares / dfControl / control.count
  const b = treated.sumSquares / dfTreated / treated.count
  const se = mustVary('control', Math.sqrt(a + b), largest)
  // as shares of the whole, so that small variances do not vanish when squared
  const df = 1 / ((a / (a + b)) ** 2 / dfControl + (b / (a + b)) ** 2 / dfTreated)
  return tested('welch-t', difference, se, df)
}
