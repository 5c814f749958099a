import { z } from 'zod'
import { calcEntry } from '../entry'
import { atFlatFields } from '../flat-fields'
import { grubbsTest } from './grubbs-test'
import { ownVariation } from './own-variation'

const nullableNumber = z.nullable(z.number())
const loaves = (block: string, batch: string, values: readonly number[]) =>
  values.map((value, i) => ({ block, batch, loaf: String(i + 1), value }))

export const variationEntries = [
  calcEntry({
    id: 'analysis/own-variation',
    input: z.strictObject({
      readings: z.array(
        z.strictObject({ block: z.optional(z.string()), batch: z.string(), loaf: z.string(), value: z.number() }),
      ),
      confidence: z.number(),
    }),
    output: z.strictObject({
      mean: z.number(),
      blockSd: nullableNumber,
      blockDf: nullableNumber,
      blockHeldAtZero: z.boolean(),
      batchSd: z.number(),
      batchDf: z.number(),
      batchHeldAtZero: z.boolean(),
      loafSd: z.number(),
      loafDf: z.number(),
      loafLow: z.number(),
      loafHigh: z.number(),
    }),
    example: {
      readings: [
        ...loaves('Monday', '1', [2480, 2510, 2495]),
        ...loaves('Monday', '2', [2530, 2555, 2520]),
        ...loaves('Friday', '3', [2390, 2420, 2405]),
        ...loaves('Friday', '4', [2450, 2440, 2475]),
      ],
      confidence: 0.95,
    },
    source: 'S. R. Searle, Linear Models, 1971, chapters 10 and 11',
    run: (q) => {
      const readings = q.readings.map((reading) => ({ arm: 'one', ...reading }))
      const found = atFlatFields(
        (field) => field.replace(/^batches$/, 'readings'),
        () => ownVariation({ ...q, readings }),
      )
      return {
        mean: found.mean,
        blockSd: found.block?.sd ?? null,
        blockDf: found.block?.df ?? null,
        blockHeldAtZero: found.block?.heldAtZero ?? false,
        batchSd: found.batch.sd,
        batchDf: found.batch.df,
        batchHeldAtZero: found.batch.heldAtZero,
        loafSd: found.loaf.sd,
        loafDf: found.loaf.df,
        loafLow: found.loaf.low,
        loafHigh: found.loaf.high,
      }
    },
  }),
  calcEntry({
    id: 'analysis/grubbs-test',
    input: z.strictObject({ values: z.array(z.number()), alpha: z.number() }),
    output: z.strictObject({
      g: z.number(),
      critical: z.number(),
      p: z.number(),
      outlier: z.boolean(),
      value: z.number(),
      place: z.number(),
    }),
    example: { values: [2510, 2485, 2530, 2495, 2790, 2505], alpha: 0.05 },
    source: 'F. E. Grubbs, Technometrics 11, 1969; NIST/SEMATECH e-Handbook, section 1.3.5.17.1',
    run: (q) => {
      const { g, critical, p, outlier, value, index } = grubbsTest(q)
      return { g, critical, p, outlier, value, place: index + 1 }
    },
  }),
] as const
