import type { BatchRead } from './invented-readings'

export type BakedBatch = { arm: number; day: number; readings: BatchRead }

/** 0.975 quantile of Student's t with 5 degrees of freedom: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2. */
const t975With5Df = 2.571

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length

/**
 * What the trial must come to, worked out apart from the app by the textbook way for two arms in complete blocks:
 * batch means of specific volume, difference of the arms' means, residual about arm and day. With one test arm
 * Dunnett's interval is Student's.
 * Source: randomized complete blocks, any textbook of design; common practice, no source.
 */
export function figuresAgain(batches: readonly BakedBatch[]) {
  const means = batches.map(({ arm, day, readings }) => ({
    arm,
    day,
    value: mean(readings.pieces.map(({ loafG, volumesMl }) => mean(volumesMl) / loafG)),
  }))
  const all = mean(means.map(({ value }) => value))
  const armMean = (arm: number) => mean(means.filter((each) => each.arm === arm).map(({ value }) => value))
  const dayMean = (day: number) => mean(means.filter((each) => each.day === day).map(({ value }) => value))
  const squares = means.reduce((sum, { arm, day, value }) => sum + (value - armMean(arm) - dayMean(day) + all) ** 2, 0)
  const df = means.length - 3
  if (df !== 5) throw new Error('the quantile is for 5 degrees of freedom')
  const perArm = means.length / 2
  const difference = armMean(1) - armMean(0)
  const half = t975With5Df * Math.sqrt((squares / df) * (2 / perArm))
  return { control: armMean(0), test: armMean(1), difference, low: difference - half, high: difference + half }
}
