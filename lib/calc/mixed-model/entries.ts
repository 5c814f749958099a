import { z } from 'zod'
import { calcEntry } from '../entry'
import { tQuantile } from '../distributions/t-quantile'
import { mustBeWithin } from '../checks'
import { atTableFields } from './at-table-fields'
import { compareMixedModelArms } from './compare-mixed-model-arms'
import type { Estimate, Inference } from './estimate-contrast'
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
  batchNames: z.optional(z.enum(['restart-in-each-block', 'once-in-all'])),
  blockOrder: z.optional(z.array(z.string())),
  levelOrder: z.optional(z.array(z.string())),
}

const maybe = z.number().nullable()

const estimate = {
  estimate: z.number(),
  se: z.number(),
  dfSatterthwaite: maybe,
  tSatterthwaite: maybe,
  pSatterthwaite: maybe,
  lowSatterthwaite: maybe,
  highSatterthwaite: maybe,
  seKenwardRoger: maybe,
  dfKenwardRoger: maybe,
  tKenwardRoger: maybe,
  pKenwardRoger: maybe,
  lowKenwardRoger: maybe,
  highKenwardRoger: maybe,
}

const factor = z.enum(['batch', 'block'])
const term = z.enum(['intercept', 'block', 'level', 'covariate', 'arm', 'arm-by-level'])

const fitted = z.strictObject({
  n: z.number(),
  remlCriterion: z.number(),
  residualVariance: z.number(),
  varianceComponents: z.array(
    z.strictObject({
      name: factor,
      levelCount: z.number(),
      variance: z.number(),
      f: maybe,
      df1: maybe,
      df2: maybe,
      p: maybe,
    }),
  ),
  boundary: z.boolean(),
  atZero: z.array(factor),
  coefficients: z.array(
    z.strictObject({ term, level: z.string().nullable(), arm: z.string().nullable(), ...estimate }),
  ),
  blockOrder: z.array(z.string()),
  levelOrder: z.array(z.string()),
  armMeans: z.array(z.strictObject({ arm: z.string(), ...estimate })),
  differences: z.array(z.strictObject({ arm: z.string(), ...estimate })),
  tests: z.array(
    z.strictObject({
      term,
      df1: z.number(),
      fSatterthwaite: maybe,
      dfSatterthwaite: maybe,
      pSatterthwaite: maybe,
      fKenwardRoger: maybe,
      dfKenwardRoger: maybe,
      pKenwardRoger: maybe,
    }),
  ),
  warnings: z.array(
    z.enum(['variance-at-zero-use-batch-means', 'variance-at-zero-left-out', 'kenward-roger-undefined']),
  ),
})

const compared = z.strictObject({
  method: z.enum(['student-t', 'dunnett-product', 'dunnett-lattice']),
  dfMethod: z.enum(['satterthwaite', 'kenward-roger']),
  df: z.number(),
  criticalValue: z.number(),
  probabilityError: z.number(),
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
  ].flatMap(([arm, block, ...values]) =>
    values.map((y) => ({ arm: String(arm), batch: '1', block: String(block), y: Number(y) })),
  ),
  arms: ['plain', 'barley malt', 'rye scald'],
  blocks: 'fixed' as const,
  levels: 'none' as const,
  covariates: 'none' as const,
}

/** Where nothing is said. */
const USUAL_CONFIDENCE = 0.95

/** An estimate as a row of an answer, with limits of its own at each approximation. */
function flat({ estimate: value, se, satterthwaite, kenwardRoger }: Estimate, confidence: number) {
  const limit = (own: Inference | null, side: 1 | -1) =>
    own && value + side * tQuantile({ p: (1 - confidence) / 2, df: own.df, tail: 'upper' }) * own.se
  return {
    estimate: value,
    se,
    dfSatterthwaite: satterthwaite?.df ?? null,
    tSatterthwaite: satterthwaite?.t ?? null,
    pSatterthwaite: satterthwaite?.p ?? null,
    lowSatterthwaite: limit(satterthwaite, -1),
    highSatterthwaite: limit(satterthwaite, 1),
    seKenwardRoger: kenwardRoger?.se ?? null,
    dfKenwardRoger: kenwardRoger?.df ?? null,
    tKenwardRoger: kenwardRoger?.t ?? null,
    pKenwardRoger: kenwardRoger?.p ?? null,
    lowKenwardRoger: limit(kenwardRoger, -1),
    highKenwardRoger: limit(kenwardRoger, 1),
  }
}

export const mixedModelEntries = [
  calcEntry({
    id: 'mixed-model/fit-mixed-model',
    input: z.strictObject({ ...table, confidence: z.optional(z.number()) }),
    output: fitted,
    example: { ...example, confidence: USUAL_CONFIDENCE },
    source:
      'Patterson & Thompson (1971), Biometrika 58 (REML); Kenward & Roger (1997), Biometrics 53; Giesbrecht & Burns (1985), Biometrics 41; Seely & El-Bassiouni (1983), Ann. Stat. 11',
    run: ({ confidence: asked = USUAL_CONFIDENCE, ...q }) => {
      const confidence = mustBeWithin('confidence', asked, { min: 0.5, max: 0.9999 })
      const fit = atTableFields(() => fitMixedModel(tableModel(q)))
      const byArm = (own: Estimate & { arm: string }) => ({ arm: own.arm, ...flat(own, confidence) })
      return {
        n: fit.n,
        remlCriterion: fit.remlCriterion,
        residualVariance: fit.residualVariance,
        varianceComponents: fit.varianceComponents.map(({ name, levels, variance, test }) => ({
          name: factor.parse(name),
          levelCount: levels,
          variance,
          f: test?.f ?? null,
          df1: test?.df1 ?? null,
          df2: test?.df2 ?? null,
          p: test?.p ?? null,
        })),
        boundary: fit.boundary,
        atZero: fit.atZero.map((name) => factor.parse(name)),
        coefficients: [
          { term: 'intercept' as const, level: null, arm: null, ...flat(fit.intercept, confidence) },
          ...fit.coefficients.map((own) => ({
            term: term.parse(own.term),
            level: own.level,
            arm: own.arm,
            ...flat(own, confidence),
          })),
        ],
        blockOrder: [...(fit.levelOrder.block ?? [])],
        levelOrder: [...(fit.levelOrder.level ?? [])],
        armMeans: fit.armMeans.map(byArm),
        differences: fit.differences.map(byArm),
        tests: fit.tests.map(({ term: name, df1, satterthwaite, kenwardRoger }) => ({
          term: term.parse(name),
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
    source:
      'Patterson & Thompson (1971), Biometrika 58 (REML); Dunnett (1955), JASA 50; Hothorn, Bretz & Westfall (2008), Biometrical J. 50',
    run: ({ dfMethod, confidence, alternative, ...q }) => {
      const { method, df, criticalValue, probabilityError, comparisons } = atTableFields(() =>
        compareMixedModelArms({ fit: fitMixedModel(tableModel(q)), dfMethod, confidence, alternative }),
      )
      return { method, dfMethod, df, criticalValue, probabilityError, comparisons }
    },
  }),
] as const
