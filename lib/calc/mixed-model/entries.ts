import { z } from 'zod'
import { calcEntry } from '../entry'
import { atFlatFields } from '../flat-fields'
import { compareMixedModelArms } from './compare-mixed-model-arms'
import type { Estimate } from './estimate-contrast'
import { fitMixedModel } from './fit-mixed-model'
import { tableModel } from './table-model'

const row = z.strictObject({
  arm: z.string(),
  batch: z.string(),
  block: z.string().optional(),
  level: z.string().optional(),
  covariate: z.number().optional(),
  y: z.number(),
})

const table = {
  rows: z.array(row),
  arms: z.array(z.string()),
  blocks: z.enum(['none', 'fixed', 'random']),
  levels: z.enum(['none', 'additive', 'by-arm']),
  covariates: z.enum(['none', 'common-slope']),
}

const maybe = z.number().nullable()

const estimate = {
  estimate: z.number(),
  se: z.number(),
  dfSatterthwaite: maybe,
  pSatterthwaite: maybe,
  seKenwardRoger: maybe,
  dfKenwardRoger: maybe,
  pKenwardRoger: maybe,
}

const fitted = z.strictObject({
  n: z.number(),
  remlCriterion: z.number(),
  residualVariance: z.number(),
  varianceComponents: z.array(z.strictObject({ name: z.string(), levelCount: z.number(), variance: z.number() })),
  boundary: z.boolean(),
  armMeans: z.array(z.strictObject({ arm: z.string(), ...estimate })),
  differences: z.array(z.strictObject({ arm: z.string(), ...estimate })),
  tests: z.array(
    z.strictObject({
      term: z.string(),
      df1: z.number(),
      fSatterthwaite: maybe,
      dfSatterthwaite: maybe,
      pSatterthwaite: maybe,
      fKenwardRoger: maybe,
      dfKenwardRoger: maybe,
      pKenwardRoger: maybe,
    }),
  ),
  warnings: z.array(z.enum(['variance-at-zero-use-batch-means', 'kenward-roger-undefined'])),
})

const compared = z.strictObject({
  method: z.enum(['student-t', 'dunnett-product', 'dunnett-lattice']),
  dfMethod: z.enum(['satterthwaite', 'kenward-roger']),
  df: z.number(),
  criticalValue: z.number(),
  comparisons: z.array(
    z.strictObject({
      arm: z.string(),
      estimate: z.number(),
      se: z.number(),
      df: z.number(),
      t: z.number(),
      pAdjusted: z.number(),
      low: z.number().nullable(),
      high: z.number().nullable(),
    }),
  ),
})

/** Invented: bread volume in mL, two loaves of each of three batches a kind, on three mixing days. */
const example = {
  rows: [
    ['plain', '1', 2410, 2435],
    ['plain', '2', 2480, 2465],
    ['plain', '3', 2390, 2420],
    ['barley malt', '1', 2520, 2495],
    ['barley malt', '2', 2575, 2600],
    ['barley malt', '3', 2470, 2440],
    ['rye scald', '1', 2405, 2450],
    ['rye scald', '2', 2455, 2420],
    ['rye scald', '3', 2440, 2415],
  ].flatMap(([arm, block, ...values]) => values.map((y) => ({ arm: String(arm), batch: '1', block: String(block), y: Number(y) }))),
  arms: ['plain', 'barley malt', 'rye scald'],
  blocks: 'fixed' as const,
  levels: 'none' as const,
  covariates: 'none' as const,
}

const flat = ({ arm, estimate: value, se, satterthwaite, kenwardRoger }: Estimate & { arm: string }) => ({
  arm,
  estimate: value,
  se,
  dfSatterthwaite: satterthwaite?.df ?? null,
  pSatterthwaite: satterthwaite?.p ?? null,
  seKenwardRoger: kenwardRoger?.se ?? null,
  dfKenwardRoger: kenwardRoger?.df ?? null,
  pKenwardRoger: kenwardRoger?.p ?? null,
})

export const mixedModelEntries = [
  calcEntry({
    id: 'mixed-model/fit-mixed-model',
    input: z.strictObject(table),
    output: fitted,
    example,
    source: 'Patterson & Thompson (1971), Biometrika 58; Kenward & Roger (1997), Biometrics 53; Giesbrecht & Burns (1985), Biometrics 41',
    run: (q) => {
      const fit = fitMixedModel(tableModel(q))
      return {
        n: fit.n,
        remlCriterion: fit.remlCriterion,
        residualVariance: fit.residualVariance,
        varianceComponents: fit.varianceComponents.map(({ name, levels, variance }) => ({ name, levelCount: levels, variance })),
        boundary: fit.boundary,
        armMeans: fit.armMeans.map(flat),
        differences: fit.differences.map(flat),
        tests: fit.tests.map(({ term, df1, satterthwaite, kenwardRoger }) => ({
          term,
          df1,
          fSatterthwaite: satterthwaite?.f ?? null,
          dfSatterthwaite: satterthwaite?.df2 ?? null,
          pSatterthwaite: satterthwaite?.p ?? null,
          fKenwardRoger: kenwardRoger?.f ?? null,
          dfKenwardRoger: kenwardRoger?.df2 ?? null,
          pKenwardRoger: kenwardRoger?.p ?? null,
        })),
        warnings: fit.warnings,
      }
    },
  }),
  calcEntry({
    id: 'mixed-model/compare-mixed-model-arms',
    input: z.strictObject({
      ...table,
      dfMethod: z.enum(['satterthwaite', 'kenward-roger']),
      confidence: z.number(),
      alternative: z.enum(['two-sided', 'greater', 'less']),
    }),
    output: compared,
    example: { ...example, dfMethod: 'kenward-roger', confidence: 0.95, alternative: 'two-sided' },
    source: 'Dunnett (1955), JASA 50; Hothorn, Bretz & Westfall (2008), Biometrical J. 50',
    run: ({ dfMethod, confidence, alternative, ...q }) => {
      const { method, df, criticalValue, comparisons } = atFlatFields({ fit: 'rows' }, () =>
        compareMixedModelArms({ fit: fitMixedModel(tableModel(q)), dfMethod, confidence, alternative }),
      )
      return { method, dfMethod, df, criticalValue, comparisons }
    },
  }),
] as const
