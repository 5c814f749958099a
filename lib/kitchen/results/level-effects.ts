import 'server-only'
import { splitPlot } from '../../calc/analysis/split-plot'
import type { FTest } from '../../calc/comparison/types'
import { sureOf } from '../sure-of'
import { meanOf, type CountedBatch } from './count-batches'
import type { LimitCode } from './codes'
import { fTestOf } from './f-test-of'
import { limitOfCalcError } from './limit-of-calc-error'

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
  const rows = ofArms.flatMap(({ batch: { day, arm }, values }) =>
    levels.map((level, i) => ({ day, arm, level, y: sureOf(values[i], 'the value of a level') })),
  )
  const cells = q.arms.flatMap((arm) => {
    const ofArm = rows.filter((row) => row.arm === arm)
    return ofArm.length === 0
      ? []
      : levels.map((level) => ({
          arm,
          level,
          mean: meanOf(ofArm.flatMap((row) => (row.level === level ? row.y : []))),
        }))
  })
  const whole = { factor: q.factor.name, levels, cells }
  if (new Set(ofArms.map(({ batch }) => batch.day)).size < 2) return { ...whole, tests: null, limit: 'levels-one-day' }
  try {
    const { anova } = splitPlot({
      rows: rows.map(({ day, arm, level, y }) => ({ block: String(day), arm: String(arm), level, y })),
      arms: q.arms.map(String),
      levels,
    })
    const [, arm, batch, level, armByLevel, piece] = anova
    return {
      ...whole,
      tests: {
        arm: fTestOf(arm, batch.df),
        level: fTestOf(level, piece.df),
        armByLevel: fTestOf(armByLevel, piece.df),
      },
      limit: null,
    }
  } catch (error) {
    return { ...whole, tests: null, limit: limitOfCalcError(error) }
  }
}
