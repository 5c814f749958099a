import 'server-only'
import { splitPlot } from '../../calc/analysis/split-plot'
import { meanOf, type CountedBatch } from './count-batches'
import type { LimitCode } from './codes'
import { limitOfCalcError } from './limit-of-calc-error'

export type FTest = { f: number; df1: number; df2: number; p: number }

export type LevelEffects = {
  factor: string
  levels: readonly string[]
  /** Mean of each arm at each level, over the batches that count. */
  cells: { arm: number; level: string; mean: number }[]
  /** Null when the doughs are not complete enough for it; then `limit` says why. */
  tests: { arm: FTest; level: FTest; armByLevel: FTest } | null
  limit: LimitCode | null
}

/**
 * A factor within batches: means by arm and level, and the tests of a split plot, the arm against batches, the level
 * and its interaction with the arm against pieces. Needs one batch of every arm on every mixing day.
 * @param arms positions of those compared, the control first
 */
export function levelEffects(q: {
  factor: { name: string; levels: readonly string[] }
  arms: readonly number[]
  counted: readonly CountedBatch[]
}): LevelEffects {
  const { levels } = q.factor
  const ofArms = q.counted.filter(({ batch }) => q.arms.includes(batch.arm))
  const cells = q.arms.flatMap((arm) => {
    const batches = ofArms.filter(({ batch }) => batch.arm === arm)
    return batches.length === 0
      ? []
      : levels.map((level, i) => ({ arm, level, mean: meanOf(batches.map(({ values }) => values[i]!)) }))
  })
  const whole = { factor: q.factor.name, levels, cells }
  if (new Set(ofArms.map(({ batch }) => batch.day)).size < 2) return { ...whole, tests: null, limit: 'levels-one-day' }
  try {
    const { anova } = splitPlot({
      rows: ofArms.flatMap(({ batch, values }) =>
        values.map((y, i) => ({ block: String(batch.day), arm: String(batch.arm), level: levels[i]!, y })),
      ),
      arms: q.arms.map(String),
      levels,
    })
    const [, arm, batch, level, armByLevel, piece] = anova
    const test = (row: typeof arm, error: typeof arm): FTest => ({ f: row.f!, df1: row.df, df2: error.df, p: row.p! })
    return {
      ...whole,
      tests: { arm: test(arm, batch), level: test(level, piece), armByLevel: test(armByLevel, piece) },
      limit: null,
    }
  } catch (error) {
    return { ...whole, tests: null, limit: limitOfCalcError(error) }
  }
}
