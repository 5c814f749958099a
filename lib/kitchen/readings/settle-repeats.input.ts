import { agreeReadings } from '../../calc/loaf/agree-readings'
import { summariseReadings } from '../../calc/loaf/summarise-readings'
import { median } from '../../calc/median'

export type SettledReading = {
  /** Mean of the readings, or their median where they never agreed. */
  value: number
  outcome: 'mean' | 'median'
  n: number
  /** Largest less smallest. */
  range: number
  /** Standard deviation with divisor n − 1; null for a single reading. */
  sd: number | null
  /** Most that two readings may differ by. */
  repeatLimit: number
  /** False while a reading is still to come: the value may change. */
  settled: boolean
  /** 'repeat': fewer than the measure asks for; 'third': two that disagree ask for a third; null: none is needed. */
  needs: 'repeat' | 'third' | null
}

/** Share of the mean by which two readings may differ where the measure says nothing. Common practice, no source. */
const usualLimitShare = 0.02

/**
 * One figure out of the repeat readings of one thing. Up to three follow `agreeReadings`; of four or more it is the
 * median: common practice, no source.
 * @param values in the measure's base unit, 1 or more, in the order of their repeats
 * @param repeats how many the measure asks for, ≥ 1
 * @param repeatLimit of the measure, base unit; null takes 2 % of the mean
 * @throws CalcError 'empty' | 'not-finite'
 */
export function settleRepeats(q: {
  values: readonly number[]
  repeats: number
  repeatLimit: number | null
}): SettledReading {
  const { n, mean, range, sd } = summariseReadings(q.values)
  const repeatLimit = q.repeatLimit ?? Math.abs(mean) * usualLimitShare
  const whole = { n, range, sd, repeatLimit }
  const short = n < q.repeats ? ('repeat' as const) : null
  if (n === 1 || (n <= 3 && repeatLimit <= 0))
    return { ...whole, value: mean, outcome: 'mean', settled: !short, needs: short }
  if (n > 3) return { ...whole, value: median(q.values), outcome: 'median', settled: !short, needs: short }
  const agreed = agreeReadings({ readings: q.values, repeatabilityLimit: repeatLimit })
  if (agreed.outcome === 'needs-another')
    return { ...whole, value: mean, outcome: 'mean', settled: false, needs: 'third' }
  return { ...whole, value: agreed.value ?? mean, outcome: agreed.outcome, settled: !short, needs: short }
}
