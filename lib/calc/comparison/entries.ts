import { z } from 'zod'
import { calcEntry } from '../entry'
import { atFlatFields } from '../flat-fields'
import { ancova } from './ancova'
import { armsInBlocks } from './arms-in-blocks'
import { kruskalWallis } from './kruskal-wallis'
import { latinSquareAnova } from './latin-square'
import { oneWayAnova } from './one-way-anova'
import { ratioToControl } from './ratio-to-control'
import { readerVariation } from './reader-variation'
import { repeatability } from './repeatability'
import { tTest } from './t-test'
import { tukeyKramer } from './tukey-kramer'
import { welchAnova } from './welch-anova'

const n = z.number()
const confidence = n
const armRows = z.array(z.strictObject({ arm: z.string(), y: n }))
const blockRows = z.array(z.strictObject({ arm: z.string(), block: z.optional(z.string()), y: n }))
const numbers = z.array(n)

const interval = { se: n, df: n, low: n, high: n }
const armMeans = z.array(z.strictObject({ arm: z.string(), count: n, mean: n, ...interval }))
const estimates = z.array(z.strictObject({ arm: z.string(), estimate: n, ...interval }))
const differences = z.array(z.strictObject({ arm: z.string(), estimate: n, t: n, p: n, ...interval }))
const anova = z.array(
  z.strictObject({ source: z.string(), df: n, sumSquares: n, meanSquare: n, f: z.nullable(n), p: z.nullable(n) }),
)
const fTest = { f: n, df1: n, df2: n, p: n }
const component = { sd: n, df: n, heldAtZero: z.boolean() }

/** Invented: volumes of loaves in ml, with malt flour at two doses. */
const control = [2450, 2510, 2480, 2470]
const treated = [2590, 2560, 2640, 2600]
const exampleRows = [
  ...control.map((y) => ({ arm: 'control', y })),
  ...treated.map((y) => ({ arm: 'malt 1 %', y })),
  ...[2620, 2650, 2580, 2660].map((y) => ({ arm: 'malt 2 %', y })),
]
const inBlocks = exampleRows.map((row, i) => ({ ...row, block: `day ${(i % 4) + 1}` }))
const doughTemps = [25.8, 26.4, 26.1, 25.9, 26.3, 25.7, 26.6, 26.0, 26.2, 26.5, 25.8, 26.4]

export const comparisonEntries = [
  calcEntry({
    id: 'comparison/one-way-anova',
    input: z.strictObject({ rows: armRows, confidence }),
    output: z.strictObject({
      method: z.enum(['one-way-anova']),
      sumSquaresBetween: n,
      sumSquaresWithin: n,
      meanSquareBetween: n,
      meanSquareWithin: n,
      ...fTest,
      explainedShare: n,
      residualSd: n,
      grandMean: n,
      confidence,
      arms: armMeans,
    }),
    example: { rows: exampleRows, confidence: 0.95 },
    source: 'Fisher (1925), Statistical Methods for Research Workers, chapter VII',
    run: oneWayAnova,
  }),
  calcEntry({
    id: 'comparison/welch-anova',
    input: z.strictObject({ rows: armRows, confidence }),
    output: z.strictObject({ method: z.enum(['welch-anova']), ...fTest, confidence, arms: armMeans }),
    example: { rows: exampleRows, confidence: 0.95 },
    source: 'Welch (1951), On the comparison of several mean values, Biometrika 38',
    run: welchAnova,
  }),
  calcEntry({
    id: 'comparison/t-test',
    input: z.strictObject({
      kind: z.enum(['student', 'welch', 'paired']),
      control: numbers,
      treated: numbers,
      confidence,
    }),
    output: z.strictObject({
      method: z.enum(['student-t', 'welch-t', 'paired-t']),
      controlMean: n,
      treatedMean: n,
      difference: n,
      t: n,
      p: n,
      confidence,
      ...interval,
    }),
    example: { kind: 'welch', control, treated, confidence: 0.95 },
    source: 'Student (1908), Biometrika 6; Welch (1947), Biometrika 34',
    run: tTest,
  }),
  calcEntry({
    id: 'comparison/kruskal-wallis',
    input: z.strictObject({ rows: armRows }),
    output: z.strictObject({
      method: z.enum(['kruskal-wallis-chi-squared']),
      h: n,
      df: n,
      p: n,
      arms: z.array(z.strictObject({ arm: z.string(), count: n, meanRank: n })),
      warnings: z.array(z.enum(['small-arms'])),
    }),
    example: { rows: exampleRows },
    source: 'Kruskal & Wallis (1952), Use of ranks in one-criterion variance analysis, JASA 47',
    run: kruskalWallis,
  }),
  calcEntry({
    id: 'comparison/tukey-kramer',
    input: z.strictObject({ rows: blockRows, confidence }),
    output: z.strictObject({
      method: z.enum(['tukey-kramer']),
      residualSd: n,
      df: n,
      criticalValue: n,
      confidence,
      pairs: z.array(
        z.strictObject({ from: z.string(), to: z.string(), difference: n, se: n, low: n, high: n, pAdjusted: n }),
      ),
    }),
    example: { rows: inBlocks, confidence: 0.95 },
    source: 'Kramer (1956), Extension of multiple range tests, Biometrics 12',
    run: (q) => atFlatFields({ arms: 'rows' }, () => tukeyKramer(q)),
  }),
  calcEntry({
    id: 'comparison/latin-square',
    input: z.strictObject({
      rows: z.array(z.strictObject({ row: z.string(), column: z.string(), arm: z.string(), y: n })),
      confidence,
    }),
    output: z.strictObject({
      method: z.enum(['latin-square']),
      anova,
      residualSd: n,
      residualDf: n,
      confidence,
      arms: armMeans,
      differenceSe: n,
      differenceHalfWidth: n,
    }),
    example: {
      rows: [2450, 2590, 2640, 2570, 2660, 2470, 2630, 2480, 2600].map((y, i) => {
        const [row, column] = [Math.floor(i / 3), i % 3]
        return {
          row: `day ${row + 1}`,
          column: `deck ${column + 1}`,
          arm: ['control', 'malt 1 %', 'malt 2 %'][(row + column) % 3]!,
          y,
        }
      }),
      confidence: 0.95,
    },
    source: 'Cochran & Cox (1957), Experimental Designs, section 4.3',
    run: latinSquareAnova,
  }),
  calcEntry({
    id: 'comparison/arms-in-blocks',
    input: z.strictObject({ rows: blockRows, control: z.string(), confidence }),
    output: z.strictObject({
      method: z.enum(['arm', 'arm-and-block']),
      count: n,
      anova,
      residualSd: n,
      residualDf: n,
      cvPct: z.nullable(n),
      confidence,
      arms: estimates,
      differences,
    }),
    example: { rows: inBlocks, control: 'control', confidence: 0.95 },
    source: 'Cochran & Cox (1957), Experimental Designs, chapter 4',
    run: (q) => atFlatFields({ arms: 'rows' }, () => armsInBlocks(q)),
  }),
  calcEntry({
    id: 'comparison/ancova',
    input: z.strictObject({
      rows: z.array(z.strictObject({ arm: z.string(), block: z.optional(z.string()), x: n, y: n })),
      control: z.string(),
      confidence,
    }),
    output: z.strictObject({
      method: z.enum(['ancova', 'ancova-in-blocks']),
      covariateMean: n,
      slope: z.strictObject({ estimate: n, ...interval }),
      residualSd: n,
      residualDf: n,
      armTest: z.strictObject(fTest),
      covariateTest: z.strictObject(fTest),
      interactionTest: z.nullable(z.strictObject(fTest)),
      confidence,
      adjustedMeans: estimates,
      differences,
      warnings: z.array(z.enum(['beyond-covariate', 'no-interaction-test'])),
    }),
    example: {
      rows: exampleRows.map((row, i) => ({ ...row, x: doughTemps[i]! })),
      control: 'control',
      confidence: 0.95,
    },
    source: 'Snedecor & Cochran (1980), Statistical Methods, chapter 18',
    run: ancova,
  }),
  calcEntry({
    id: 'comparison/ratio-to-control',
    input: z.strictObject({
      method: z.enum(['fieller', 'delta-log', 'log-means', 'paired-log']),
      control: numbers,
      treated: numbers,
      confidence,
    }),
    output: z.strictObject({
      method: z.enum(['fieller', 'delta-log', 'log-means', 'paired-log']),
      ratio: n,
      low: z.nullable(n),
      high: z.nullable(n),
      pct: n,
      lowPct: z.nullable(n),
      highPct: z.nullable(n),
      bounded: z.boolean(),
      df: n,
      confidence,
      g: z.nullable(n),
      seLog: z.nullable(n),
    }),
    example: { method: 'fieller', control, treated, confidence: 0.95 },
    source: 'Fieller (1954), Some problems in interval estimation, JRSS B 16',
    run: ratioToControl,
  }),
  calcEntry({
    id: 'comparison/repeatability',
    input: z.strictObject({ rows: z.array(z.strictObject({ batch: z.string(), y: n })), confidence }),
    output: z.strictObject({
      method: z.enum(['anova-moments']),
      grandMean: n,
      repeatabilitySd: n,
      df: n,
      low: n,
      high: n,
      confidence,
      betweenSd: n,
      betweenHeldAtZero: z.boolean(),
      intermediateSd: n,
      effectiveBatchSize: n,
      repeatabilityLimit: n,
      betweenShare: n,
      repeatabilityCvPct: z.nullable(n),
      intermediateCvPct: z.nullable(n),
      pooledCvPct: z.nullable(n),
    }),
    example: {
      rows: exampleRows.slice(0, 6).map(({ y }, i) => ({ batch: `dough ${Math.floor(i / 2) + 1}`, y })),
      confidence: 0.95,
    },
    source: 'ISO 5725-2:2019, Basic method for the determination of repeatability and reproducibility',
    run: (q) => atFlatFields({ readings: 'rows', batches: 'rows' }, () => repeatability(q)),
  }),
  calcEntry({
    id: 'comparison/reader-variation',
    input: z.strictObject({
      rows: z.array(z.strictObject({ loaf: z.string(), reader: z.string(), y: n })),
      confidence,
    }),
    output: z.strictObject({
      method: z.enum(['crossed-anova-moments']),
      grandMean: n,
      loaf: z.strictObject(component),
      reader: z.strictObject(component),
      readerByLoaf: z.strictObject(component),
      repeat: z.strictObject({ ...component, low: n, high: n }),
      confidence,
      readingSd: n,
      readingShare: n,
    }),
    example: {
      rows: [2450, 2460, 2470, 2460, 2590, 2600, 2600, 2610].map((y, i) => ({
        loaf: `loaf ${Math.floor(i / 4) + 1}`,
        reader: Math.floor(i / 2) % 2 ? 'second' : 'first',
        y,
      })),
      confidence: 0.95,
    },
    source:
      'Montgomery & Runger (1993), Gauge capability analysis and designed experiments, part II, Quality Engineering 6',
    run: (q) => atFlatFields({ loaves: 'rows', readers: 'rows' }, () => readerVariation(q)),
  }),
] as const
