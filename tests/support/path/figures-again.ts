import type { BatchRead } from './invented-readings'

export type BakedBatch = { arm: number; day: number; readings: BatchRead }

/** 0.975 quantile of Student's t with 3 degrees of freedom: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2. */
const t975With3Df = 3.182

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length

/**
 * What the trial must come to, worked out apart from the app by the textbook way for two arms, one dough each on each of
 * four days: the paired t-test of the logarithms of dough means of specific volume, as the margin is in %. With one test
 * arm Dunnett's interval is Student's.
 * Source: Student (1908), Biometrika 6; logarithms for ratios are common practice, no source.
 */
export function figuresAgain(batches: readonly BakedBatch[]) {
  const valueOf = (arm: number, day: number) => {
    const [dough, ...more] = batches.filter((each) => each.arm === arm && each.day === day)
    if (!dough || more.length > 0) throw new Error('one dough of each kind on each day')
    return mean(dough.readings.pieces.map(({ loafG, volumesMl }) => mean(volumesMl) / loafG))
  }
  const days = [...new Set(batches.map(({ day }) => day))]
  if (days.length !== 4) throw new Error('the quantile is for four days')
  const armMean = (arm: number) => mean(days.map((day) => valueOf(arm, day)))
  const logs = days.map((day) => Math.log(valueOf(1, day) / valueOf(0, day)))
  const log = mean(logs)
  const sd = Math.sqrt(logs.reduce((sum, each) => sum + (each - log) ** 2, 0) / 3)
  const half = (t975With3Df * sd) / 2
  const pct = (of: number) => 100 * (Math.exp(of) - 1)
  return {
    control: armMean(0),
    test: armMean(1),
    difference: armMean(1) - armMean(0),
    pct: pct(log),
    lowPct: pct(log - half),
    highPct: pct(log + half),
  }
}
