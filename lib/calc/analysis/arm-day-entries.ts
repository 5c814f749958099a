import { z } from 'zod'
import { mustBeGiven } from '../checks'
import { calcEntry } from '../entry'
import { atFlatFields } from '../flat-fields'
import { judgeArmDays } from './judge-arm-days'
import { judgeLogRatios } from './judge-log-ratios'
import { ratioInBlocks } from './ratio-in-blocks'
import { studentizedResiduals } from './studentized-residuals'

const nullableNumber = z.nullable(z.number())
const optionalNumber = z.optional(z.number())
const dough = z.strictObject({ arm: z.string(), block: z.string(), y: optionalNumber })
const rule = {
  question: z.enum(['gain', 'no-worse', 'same']),
  goodDirection: z.optional(z.enum(['larger', 'smaller'])),
  confidence: z.number(),
  unit: z.enum(['arm-days', 'doughs']),
  correlation: z.enum(['model', 'numbers-kept']),
}
const noInterval = z.nullable(z.enum(['no-residual-df', 'zero-variance']))
const judgement = {
  days: z.number(),
  completeDays: z.number(),
  leftOut: z.array(z.string()),
  df: z.number(),
  errorSd: nullableNumber,
  noInterval,
  criticalValue: nullableNumber,
  adjustment: z.nullable(z.enum(['student-t', 'dunnett-product', 'dunnett-lattice'])),
  probabilityError: nullableNumber,
  means: z.array(z.strictObject({ arm: z.string(), doughs: z.number(), mean: z.number() })),
}
const judged = {
  t: nullableNumber,
  low: nullableNumber,
  high: nullableNumber,
  otherLimit: nullableNumber,
  pAdjusted: nullableNumber,
  pLower: nullableNumber,
  pUpper: nullableNumber,
  verdict: z.nullable(
    z.enum([
      'better',
      'better-on-pooled-error-only',
      'worse',
      'no-worthwhile-difference',
      'no-worse',
      'same',
      'different',
      'undecided',
    ]),
  ),
  clearly: z.boolean(),
  ownDays: nullableNumber,
  ownDf: nullableNumber,
  ownLow: nullableNumber,
  ownHigh: nullableNumber,
}

/** The control before the others, in the order in which they first come. */
const armsOf = (control: string, rows: readonly { arm: string }[]) => [
  ...new Set([control, ...rows.map(({ arm }) => arm)]),
]

/** A fault that a step within finds is one of the rows, or of the name of the control. */
const flatField = (field: string) =>
  field === 'arms' ? 'control' : /^(rows|confidence|margin|marginPct)\b/.test(field) ? field : 'rows'

const errorSdOf = (meanSquare: number | null) => (meanSquare === null ? null : Math.sqrt(meanSquare))

const days = ['Monday', 'Tuesday', 'Thursday', 'Friday'].flatMap((block, i) => [
  { arm: 'control', block, y: 2480 + 31 * i },
  { arm: 'B', block, y: 2595 + 35 * i - 4 * i * i },
  { arm: 'C', block, y: 2500 + 22 * i + 3 * i * i },
])

export const armDayEntries = [
  calcEntry({
    id: 'analysis/judge-arm-days',
    input: z.strictObject({ rows: z.array(dough), control: z.string(), ...rule, margin: z.number() }),
    output: z.strictObject({
      ...judgement,
      comparisons: z.array(
        z.strictObject({
          arm: z.string(),
          estimate: z.number(),
          se: nullableNumber,
          ...judged,
          ownMean: nullableNumber,
          ownSe: nullableNumber,
        }),
      ),
    }),
    example: {
      rows: days,
      control: 'control',
      question: 'gain',
      goodDirection: 'larger',
      confidence: 0.95,
      unit: 'arm-days',
      correlation: 'model',
      margin: 80,
    },
    source:
      'S. R. Searle, Linear Models, 1971, chapters 3 and 7; C. W. Dunnett, JASA 50, 1955; D. J. Schuirmann, 1987; our own declared rule',
    run: ({ control, margin, goodDirection = null, ...q }) => {
      if (q.question !== 'same') mustBeGiven('goodDirection', goodDirection)
      const arms = armsOf(control, q.rows)
      const { meanSquare, comparisons, ...found } = atFlatFields(flatField, () =>
        judgeArmDays({ ...q, arms, goodDirection, margin: { more: margin, less: margin } }),
      )
      return {
        ...found,
        errorSd: errorSdOf(meanSquare),
        comparisons: comparisons.map(({ own, ...one }) => ({
          ...one,
          ownDays: own?.days ?? null,
          ownMean: own?.mean ?? null,
          ownSe: own?.se ?? null,
          ownDf: own?.df ?? null,
          ownLow: own?.low ?? null,
          ownHigh: own?.high ?? null,
        })),
      }
    },
  }),
  calcEntry({
    id: 'analysis/judge-log-ratios',
    input: z.strictObject({ rows: z.array(dough), control: z.string(), ...rule, marginPct: z.number() }),
    output: z.strictObject({
      ...judgement,
      comparisons: z.array(
        z.strictObject({
          arm: z.string(),
          ratio: z.number(),
          seLog: nullableNumber,
          ...judged,
          ownRatio: nullableNumber,
        }),
      ),
    }),
    example: {
      rows: days,
      control: 'control',
      question: 'no-worse',
      goodDirection: 'larger',
      confidence: 0.95,
      unit: 'arm-days',
      correlation: 'model',
      marginPct: 3,
    },
    source:
      'S. R. Searle, Linear Models, 1971, chapters 3 and 7; C. W. Dunnett, JASA 50, 1955; D. J. Schuirmann, 1987; logarithms of ratios are common practice, no source',
    run: ({ control, goodDirection = null, ...q }) => {
      if (q.question !== 'same') mustBeGiven('goodDirection', goodDirection)
      const arms = armsOf(control, q.rows)
      const { meanSquare, comparisons, ...found } = atFlatFields(flatField, () =>
        judgeLogRatios({ ...q, arms, goodDirection }),
      )
      return {
        ...found,
        errorSd: errorSdOf(meanSquare),
        comparisons: comparisons.map(({ own, se, ...one }) => ({
          ...one,
          seLog: se,
          ownDays: own?.days ?? null,
          ownRatio: own?.ratio ?? null,
          ownDf: own?.df ?? null,
          ownLow: own?.low ?? null,
          ownHigh: own?.high ?? null,
        })),
      }
    },
  }),
  calcEntry({
    id: 'analysis/ratio-in-blocks',
    input: z.strictObject({ rows: z.array(dough), control: z.string(), confidence: z.number() }),
    output: z.strictObject({
      df: z.number(),
      t: nullableNumber,
      noInterval,
      comparisons: z.array(
        z.strictObject({
          arm: z.string(),
          controlMean: z.number(),
          armMean: z.number(),
          controlVariance: nullableNumber,
          armVariance: nullableNumber,
          covariance: nullableNumber,
          ratio: nullableNumber,
          g: nullableNumber,
          low: nullableNumber,
          high: nullableNumber,
          set: z.nullable(z.enum(['interval', 'outside', 'everything'])),
        }),
      ),
    }),
    example: { rows: days, control: 'control', confidence: 0.95 },
    source: 'E. C. Fieller, JRSS B 16, 1954; S. R. Searle, Linear Models, 1971, chapters 3 and 7',
    run: ({ control, ...q }) => atFlatFields(flatField, () => ratioInBlocks({ ...q, arms: armsOf(control, q.rows) })),
  }),
  calcEntry({
    id: 'analysis/studentized-residuals',
    input: z.strictObject({
      rows: z.array(dough),
      alpha: z.number(),
      ownSd: optionalNumber,
      ownDf: optionalNumber,
    }),
    output: z.strictObject({
      outcome: z.enum(['this-dough', 'one-of-these', 'none-stands-out', 'cannot-be-told']),
      suspects: z.array(z.strictObject({ place: z.number(), arm: z.string(), block: z.string(), y: z.number() })),
      errorDf: z.number(),
      testDf: z.number(),
      judged: z.number(),
      criticalT: nullableNumber,
      doughs: z.array(
        z.strictObject({
          place: z.number(),
          arm: z.string(),
          block: z.string(),
          residual: z.number(),
          leverage: z.number(),
          t: nullableNumber,
          pAdjusted: nullableNumber,
        }),
      ),
    }),
    example: {
      rows: days.map((row, i) => (i === 7 ? { ...row, y: row.y - 600 } : row)),
      alpha: 0.05,
    },
    source: 'R. D. Cook and S. Weisberg, Residuals and Influence in Regression, 1982, section 2.2',
    run: ({ rows, alpha, ownSd, ownDf }) => {
      const own =
        ownSd === undefined && ownDf === undefined
          ? undefined
          : { sd: mustBeGiven('ownSd', ownSd), df: mustBeGiven('ownDf', ownDf) }
      const found = atFlatFields(
        (field) =>
          field
            .replace('own.sd', 'ownSd')
            .replace('own.df', 'ownDf')
            .replace(/^x\b.*/, 'rows'),
        () => studentizedResiduals({ rows, alpha, ...(own && { own }) }),
      )
      const named = (row: number) => ({ place: row + 1, arm: rows[row]!.arm, block: rows[row]!.block })
      return {
        ...found,
        suspects: found.suspects.map((row) => ({ ...named(row), y: rows[row]!.y! })),
        doughs: found.doughs.map(({ row, ...one }) => ({ ...named(row), ...one })),
      }
    },
  }),
] as const
