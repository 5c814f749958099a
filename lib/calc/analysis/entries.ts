import { z } from 'zod'
import { mustBeWithin, mustHaveAtMost, mustOrder } from '../checks'
import { dunnettLoadings } from '../distributions/dunnett-loadings'
import { calcEntry } from '../entry'
import { atFlatFields } from '../flat-fields'
import { adjustAgainstControl } from './adjust-against-control'
import { analyseBatches } from './analyse-batches'
import { armDayEntries } from './arm-day-entries'
import { batchMeans } from './batch-means'
import { type AnovaRow, fitAdditive } from './fit-additive'
import { splitPlot } from './split-plot'
import { variationEntries } from './variation-entries'
import { verdictEntries } from './verdict-entries'

const nullableNumber = z.nullable(z.number())
const optionalText = z.optional(z.string())
const alternative = z.enum(['two-sided', 'greater', 'less'])
const loafReading = z.strictObject({
  arm: z.string(),
  block: optionalText,
  batch: z.string(),
  loaf: z.string(),
  value: z.number(),
})
const batch = {
  batch: z.string(),
  arm: z.string(),
  block: z.nullable(z.string()),
  mean: z.number(),
  loafCount: z.number(),
}
const armMean = z.strictObject({
  arm: z.string(),
  estimate: z.number(),
  se: z.number(),
  df: z.number(),
  low: z.number(),
  high: z.number(),
})
const anovaSource = z.enum(['block', 'arm', 'batch', 'level', 'arm-by-level', 'piece', 'residual'])
const anovaRow = z.strictObject({
  source: anovaSource,
  df: z.number(),
  sumSquares: z.number(),
  meanSquare: z.number(),
  f: nullableNumber,
  p: nullableNumber,
})
const comparison = {
  arm: z.string(),
  estimate: z.number(),
  se: z.number(),
  df: z.number(),
  t: z.number(),
  pAdjusted: z.number(),
  low: nullableNumber,
  high: nullableNumber,
}
const named = (row: AnovaRow) => ({ ...row, source: anovaSource.parse(row.source) })
const adjustment = z.enum(['student-t', 'dunnett-product', 'dunnett-lattice'])

/** Names in the order in which they first come, the control before them. */
const controlFirst = (control: string, names: readonly string[]) => [...new Set([control, ...names])]

/** A fault that a step within finds is one of the rows, or of the name of the control. */
const rowsField = (rows: 'rows' | 'readings') => (field: string) =>
  field === 'arms'
    ? 'control'
    : /^(rows|readings|confidence|control)\b/.test(field)
      ? field.replace(/^rows\b/, rows)
      : rows

/** Far more than a trial has, and still quick. */
const MOST_ARMS = 100

const loavesOf = (arm: string, block: string, batchName: string, values: readonly number[]) =>
  values.map((value, i) => ({ arm, block, batch: batchName, loaf: String(i + 1), value }))
const readings = [
  ...loavesOf('control', 'Monday', '1', [2480, 2510]),
  ...loavesOf('B', 'Monday', '2', [2630, 2610]),
  ...loavesOf('control', 'Tuesday', '3', [2390, 2420]),
  ...loavesOf('B', 'Tuesday', '4', [2560, 2520]),
  ...loavesOf('control', 'Friday', '5', [2450, 2440]),
  ...loavesOf('B', 'Friday', '6', [2540, 2570]),
]

export const analysisEntries = [
  calcEntry({
    id: 'analysis/analyse-batches',
    input: z.strictObject({
      readings: z.array(loafReading),
      control: z.string(),
      confidence: z.number(),
      alternative,
      scale: z.enum(['plain', 'log']),
    }),
    output: z.strictObject({
      model: z.enum(['arm', 'arm-and-block']),
      adjustment,
      residualDf: z.number(),
      residualSd: z.number(),
      criticalValue: z.number(),
      probabilityError: z.number(),
      comparisons: z.array(
        z.strictObject({ ...comparison, pct: nullableNumber, lowPct: nullableNumber, highPct: nullableNumber }),
      ),
      armMeans: z.array(armMean),
      anova: z.array(anovaRow),
      batches: z.array(z.strictObject(batch)),
      loafSd: nullableNumber,
      loafDf: nullableNumber,
      warnings: z.array(z.strictObject({ code: z.enum(['no-blocks', 'unequal-loaves']) })),
    }),
    example: { readings, control: 'control', confidence: 0.95, alternative: 'two-sided', scale: 'plain' },
    source: 'W. G. Cochran and G. M. Cox, Experimental Designs, 1957, chapters 3 and 4; C. W. Dunnett, JASA 50, 1955',
    run: ({ control, ...q }) => {
      const arms = controlFirst(
        control,
        q.readings.map(({ arm }) => arm),
      )
      const found = atFlatFields(rowsField('readings'), () => analyseBatches({ ...q, arms }))
      const noPct = { pct: null, lowPct: null, highPct: null }
      return {
        model: found.method.model,
        adjustment: found.method.adjustment,
        residualDf: found.fit.residualDf,
        residualSd: found.fit.residualSd,
        criticalValue: found.comparisons.criticalValue,
        probabilityError: found.comparisons.probabilityError,
        comparisons: found.comparisons.comparisons.map((one, i) => ({
          ...one,
          ...(found.pctComparisons?.[i] ?? noPct),
        })),
        armMeans: found.fit.armMeans,
        anova: found.fit.anova.map(named),
        batches: found.batches.map(({ loafSumSquares: _, block = null, ...one }) => ({ ...one, block })),
        loafSd: found.loafVariation?.sd ?? null,
        loafDf: found.loafVariation?.df ?? null,
        warnings: found.warnings.map((code) => ({ code })),
      }
    },
  }),
  calcEntry({
    id: 'analysis/batch-means',
    input: z.strictObject({ readings: z.array(loafReading) }),
    output: z.strictObject({ batches: z.array(z.strictObject({ ...batch, loafSumSquares: z.number() })) }),
    example: { readings },
    source:
      'S. H. Hurlbert, Ecological Monographs 54, 1984; W. G. Cochran and G. M. Cox, Experimental Designs, 1957, chapter 2',
    run: (q) => ({ batches: batchMeans(q.readings).map(({ block = null, ...one }) => ({ ...one, block })) }),
  }),
  calcEntry({
    id: 'analysis/fit-additive',
    input: z.strictObject({
      rows: z.array(z.strictObject({ arm: z.string(), block: optionalText, y: z.number() })),
      control: z.string(),
      confidence: z.number(),
    }),
    output: z.strictObject({
      model: z.enum(['arm', 'arm-and-block']),
      n: z.number(),
      residualDf: z.number(),
      residualSd: z.number(),
      anova: z.array(anovaRow),
      blockAfterArm: z.nullable(anovaRow),
      armMeans: z.array(armMean),
      differences: z.array(
        z.strictObject({
          arm: z.string(),
          estimate: z.number(),
          se: z.number(),
          df: z.number(),
          t: z.number(),
          p: z.number(),
        }),
      ),
      residuals: z.array(z.number()),
    }),
    example: {
      rows: [4.1, 4.4, 4.2].flatMap((y) => [
        { arm: 'control', y },
        { arm: 'B', y: y + 0.6 },
        { arm: 'C', y: 9 - y },
      ]),
      control: 'control',
      confidence: 0.95,
    },
    source: 'S. R. Searle, Linear Models, 1971, chapter 7',
    run: ({ control, ...q }) => {
      const arms = controlFirst(
        control,
        q.rows.map(({ arm }) => arm),
      )
      const found = atFlatFields(rowsField('rows'), () => fitAdditive({ ...q, arms }))
      const { method, differenceCorrelation: _, anova, blockAfterArm, ...rest } = found
      return {
        model: method.model,
        ...rest,
        anova: anova.map(named),
        blockAfterArm: blockAfterArm && named(blockAfterArm),
      }
    },
  }),
  calcEntry({
    id: 'analysis/adjust-against-control',
    input: z.strictObject({
      differences: z.array(
        z.strictObject({ arm: z.string(), estimate: z.number(), se: z.number(), replicates: z.number() }),
      ),
      controlReplicates: z.number(),
      df: z.number(),
      confidence: z.number(),
      alternative,
    }),
    output: z.strictObject({
      method: adjustment,
      criticalValue: z.number(),
      probabilityError: z.number(),
      comparisons: z.array(z.strictObject(comparison)),
    }),
    example: {
      differences: [
        { arm: 'B', estimate: 120, se: 31, replicates: 4 },
        { arm: 'C', estimate: 45, se: 31, replicates: 4 },
      ],
      controlReplicates: 4,
      df: 9,
      confidence: 0.95,
      alternative: 'two-sided',
    },
    source: 'C. W. Dunnett, JASA 50, 1955',
    run: ({ differences, controlReplicates, ...q }) => {
      mustHaveAtMost('differences', differences, MOST_ARMS)
      mustBeWithin('controlReplicates', controlReplicates, { over: 0 })
      differences.forEach(({ replicates }, i) => mustBeWithin(`differences[${i}].replicates`, replicates, { over: 0 }))
      const loadings =
        differences.length === 0
          ? []
          : dunnettLoadings({
              controlCount: controlReplicates,
              armCounts: differences.map(({ replicates }) => replicates),
            })
      const correlation = loadings.map((one, i) => loadings.map((other, j) => (i === j ? 1 : one * other)))
      const { method, criticalValue, probabilityError, comparisons } = atFlatFields(
        (field) => field.replace('correlation', 'controlReplicates'),
        () => adjustAgainstControl({ ...q, differences, correlation }),
      )
      return { method, criticalValue, probabilityError, comparisons }
    },
  }),
  calcEntry({
    id: 'analysis/split-plot',
    input: z.strictObject({
      rows: z.array(z.strictObject({ block: z.string(), arm: z.string(), level: z.string(), y: z.number() })),
      control: z.string(),
      levelOrder: z.optional(z.array(z.string())),
    }),
    output: z.strictObject({
      anova: z.array(anovaRow),
      armMeans: z.array(z.strictObject({ arm: z.string(), mean: z.number() })),
      levelMeans: z.array(z.strictObject({ level: z.string(), mean: z.number() })),
      cellMeans: z.array(z.strictObject({ arm: z.string(), level: z.string(), mean: z.number() })),
      armDifferenceSe: z.number(),
      armDifferenceDf: z.number(),
      levelDifferenceSe: z.number(),
      levelDifferenceDf: z.number(),
    }),
    example: {
      rows: ['Monday', 'Friday'].flatMap((block, i) => [
        { block, arm: 'control', level: 'day 1', y: 12.1 + 0.7 * i },
        { block, arm: 'control', level: 'day 3', y: 21.4 + 1.5 * i },
        { block, arm: 'B', level: 'day 1', y: 11.2 - 0.3 * i },
        { block, arm: 'B', level: 'day 3', y: 17.9 + 0.9 * i },
      ]),
      control: 'control',
    },
    source: 'W. G. Cochran and G. M. Cox, Experimental Designs, 1957, section 7.1',
    run: ({ rows, control, levelOrder }) => {
      const arms = controlFirst(
        control,
        rows.map(({ arm }) => arm),
      )
      const found = [...new Set(rows.map(({ level }) => level))]
      const levels = levelOrder === undefined ? found : mustOrder('levelOrder', levelOrder, found)
      const { method: _, anova, ...rest } = atFlatFields(rowsField('rows'), () => splitPlot({ rows, arms, levels }))
      return { anova: anova.map(named), ...rest }
    },
  }),
  ...armDayEntries,
  ...variationEntries,
  ...verdictEntries,
] as const
