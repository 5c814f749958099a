import { expect, test } from 'vitest'
import { z } from 'zod'
import { armDayEntries } from '@/lib/calc/analysis/arm-day-entries'
import { checkLeaves, type Tree } from '@/tests/support/reference-leaves'
import armDayCases from './data/arm-day-verdicts.json'
import logRatioCases from './data/log-ratio-verdicts.json'
import ratioCases from './data/ratio-in-blocks.json'
import residualCases from './data/studentized-residuals.json'

// Made-up loaves; each figure was computed by two routes, NumPy, SciPy and mpmath, and R. Methods: Dunnett (1955),
// JASA 50; Fieller (1954), JRSS B 16; Schuirmann (1987); Cook & Weisberg (1982).

const [judgeArmDays, judgeLogRatios, ratioInBlocks, studentizedResiduals] = armDayEntries

const tree: z.ZodType<Tree> = z.lazy(() =>
  z.union([z.number(), z.string(), z.boolean(), z.null(), z.array(tree), z.record(z.string(), tree)]),
)
const rows = z
  .array(z.object({ arm: z.string(), day: z.string(), y: z.number().nullable() }))
  .transform((all) => all.map(({ arm, day, y }) => ({ arm, block: day, ...(y === null ? {} : { y }) })))
const casesOf = <Inputs extends z.ZodType>(inputs: Inputs, data: unknown) =>
  z
    .array(
      z.object({
        title: z.string(),
        source: z.string(),
        computedWith: z.string(),
        checkedWith: z.string(),
        tolerance: z.object({ rel: z.number(), fields: z.record(z.string(), z.number()), zero_abs: z.number() }),
        inputs,
        expected: tree,
      }),
    )
    .parse(data)
const direction = z.enum(['up', 'down']).transform((way) => (way === 'up' ? 'larger' : 'smaller'))
const declared = { arms: z.array(z.string()), direction, confidence: z.number(), rows }

/** Verdicts as the reference words them. */
const wordOf = ({ verdict, clearly }: { verdict: string | null; clearly: boolean }) =>
  verdict === null
    ? null
    : verdict === 'better-on-pooled-error-only'
      ? 'better on the pooled error only'
      : verdict === 'better' && clearly
        ? 'clearly better'
        : verdict.replaceAll('-', ' ')

const armDays = casesOf(
  z.object({ ...declared, worthwhile: z.number(), correlation: z.enum(['numbers_kept', 'model']) }),
  armDayCases,
)
for (const c of armDays) {
  const { arms, direction: goodDirection, confidence, worthwhile, correlation, rows: doughs } = c.inputs
  checkLeaves(c, ['analysis/judge-arm-days'], () => {
    const found = judgeArmDays.run({
      rows: doughs,
      control: arms[0]!,
      question: 'gain',
      goodDirection,
      confidence,
      unit: 'arm-days',
      correlation: correlation === 'model' ? 'model' : 'numbers-kept',
      margin: worthwhile,
    })
    return {
      days_counted: found.days,
      days_complete: found.completeDays,
      left_out: found.leftOut,
      doughs_kept: found.means.map((one) => one.doughs),
      df: found.df,
      ms_error: found.errorSd === null ? null : found.errorSd ** 2,
      error_sd: found.errorSd,
      means: found.means.map(({ arm, mean }) => ({ arm, mean })),
      critical_value: found.criticalValue,
      comparisons: found.comparisons.map((one) => ({
        arm: one.arm,
        estimate: one.estimate,
        se: one.se,
        t: one.t,
        p_adjusted: one.pAdjusted,
        ci_lower: one.low,
        ci_upper: one.high,
        own: {
          days: one.ownDays,
          mean: one.ownMean,
          se: one.ownSe,
          df: one.ownDf,
          ci_lower: one.ownLow,
          ci_upper: one.ownHigh,
        },
        verdict: wordOf(one),
      })),
    }
  })
}

const logRatios = casesOf(
  z.object({ ...declared, kind: z.enum(['gain', 'no_worse', 'same']), margin_percent: z.number() }),
  logRatioCases,
)
for (const c of logRatios) {
  const { arms, direction: goodDirection, confidence, margin_percent: marginPct, kind, rows: doughs } = c.inputs
  checkLeaves(c, ['analysis/judge-log-ratios'], () => {
    const found = judgeLogRatios.run({
      rows: doughs,
      control: arms[0]!,
      question: kind === 'no_worse' ? 'no-worse' : kind,
      goodDirection,
      confidence,
      unit: 'arm-days',
      correlation: 'numbers-kept',
      marginPct,
    })
    return {
      days_counted: found.days,
      days_complete: found.completeDays,
      df: found.df,
      error_sd_log: found.errorSd,
      critical_value: found.criticalValue,
      comparisons: found.comparisons.map((one) => ({
        arm: one.arm,
        ratio: one.ratio,
        se_log: one.seLog,
        ratio_lower: one.low,
        ratio_upper: one.high,
        p_adjusted: one.pAdjusted,
        p_lower: one.pLower,
        p_upper: one.pUpper,
        own: {
          days: one.ownDays,
          df: one.ownDf,
          ratio: one.ownRatio,
          ratio_lower: one.ownLow,
          ratio_upper: one.ownHigh,
        },
        verdict: wordOf(one),
        shown: one.verdict === 'no-worse' || one.verdict === 'same',
      })),
    }
  })
}

for (const c of casesOf(z.object({ arms: z.array(z.string()), confidence: z.number(), rows }), ratioCases)) {
  checkLeaves(c, ['analysis/ratio-in-blocks'], () => {
    const { rows: doughs, arms, confidence } = c.inputs
    const found = ratioInBlocks.run({ rows: doughs, control: arms[0]!, confidence })
    return {
      df: found.df,
      t: found.t,
      comparisons: found.comparisons.map((one) => ({
        arm: one.arm,
        mean_control: one.controlMean,
        mean_arm: one.armMean,
        var_control: one.controlVariance,
        var_arm: one.armVariance,
        cov: one.covariance,
        ratio: one.ratio,
        g: one.g,
        bounded: one.low !== null,
        ratio_lower: one.low,
        ratio_upper: one.high,
        set: one.set,
      })),
    }
  })
}

const residuals = casesOf(
  z.object({ alpha: z.number(), own_sd: z.number().optional(), own_df: z.number().optional(), rows }),
  residualCases,
)
for (const c of residuals) {
  const got = () => {
    const { alpha, own_sd: ownSd, own_df: ownDf, rows: doughs } = c.inputs
    return studentizedResiduals.run({ rows: doughs, alpha, ownSd, ownDf })
  }
  checkLeaves(c, ['analysis/studentized-residuals'], () => {
    const found = got()
    return {
      df_error: found.errorDf,
      df_test: found.testDf,
      doughs_judged: found.judged,
      critical_t: found.criticalT,
      doughs: found.doughs.map(({ place, residual, leverage, t, pAdjusted }) => ({
        row: place - 1,
        residual,
        leverage,
        t,
        p_bonferroni: pAdjusted,
      })),
      suspects: found.suspects.map(({ place }) => place - 1),
      outcome: found.outcome.replaceAll('-', ' '),
    }
  })
  test(`${c.title}: no more doughs are named than there are`, () => {
    const { expected } = z.object({ expected: z.object({ suspects: z.array(z.number()) }) }).parse(c)
    expect(got().suspects.map(({ place }) => place - 1)).toEqual(expected.suspects)
  })
}
