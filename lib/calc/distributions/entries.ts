import { z } from 'zod'
import { mustHaveAtLeast, mustHaveAtMost } from '../checks'
import { calcEntry } from '../entry'
import { atFlatFields } from '../flat-fields'
import { binomialTail } from './binomial-tail'
import { chiSquaredQuantile } from './chi-squared-quantile'
import { chiSquaredTail } from './chi-squared-tail'
import { dunnettLoadings } from './dunnett-loadings'
import { dunnettQuantile } from './dunnett-quantile'
import { dunnettTail } from './dunnett-tail'
import { fQuantile } from './f-quantile'
import { fTail } from './f-tail'
import { jointDistributionsEntries } from './joint-entries'
import { normalQuantile } from './normal-quantile'
import { normalTail } from './normal-tail'
import { studentizedRangeQuantile } from './studentized-range-quantile'
import { studentizedRangeTail } from './studentized-range-tail'
import { tQuantile } from './t-quantile'
import { tTail } from './t-tail'

/** Far more than a trial has, and still quick. */
const MOST_ARMS = 100

const tail = z.enum(['lower', 'upper'])
const probability = z.strictObject({ probability: z.number() })
const bothTails = z.strictObject({ lower: z.number(), upper: z.number() })
const againstControl = {
  df: z.number(),
  controlCount: z.number(),
  armCounts: z.array(z.number()),
  sides: z.enum(['one', 'two']),
}

/** The loadings of arm means against a control mean, from how many of each there are. */
function loadingsOf({ controlCount, armCounts }: { controlCount: number; armCounts: readonly number[] }): number[] {
  mustHaveAtMost('armCounts', mustHaveAtLeast('armCounts', armCounts, 1), MOST_ARMS)
  return dunnettLoadings({ controlCount, armCounts })
}

/** A loading is out of range when the counts are too far apart. */
const countField = (field: string) => field.replace('loadings', 'armCounts')

export const distributionsEntries = [
  calcEntry({
    id: 'distributions/normal-tail',
    input: z.strictObject({ z: z.number(), tail }),
    output: probability,
    example: { z: 1.96, tail: 'upper' },
    source: 'W. J. Cody, Math. Comp. 23, 1969',
    run: (q) => ({ probability: normalTail(q) }),
  }),
  calcEntry({
    id: 'distributions/normal-quantile',
    input: z.strictObject({ p: z.number(), tail }),
    output: z.strictObject({ z: z.number() }),
    example: { p: 0.025, tail: 'upper' },
    source: 'M. J. Wichura, AS 241, Applied Statistics 37, 1988',
    run: (q) => ({ z: normalQuantile(q) }),
  }),
  calcEntry({
    id: 'distributions/t-tail',
    input: z.strictObject({ t: z.number(), df: z.number(), tail }),
    output: probability,
    example: { t: 2.1, df: 12, tail: 'upper' },
    source: 'M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, 1964, 26.7.1',
    run: (q) => ({ probability: tTail(q) }),
  }),
  calcEntry({
    id: 'distributions/t-quantile',
    input: z.strictObject({ p: z.number(), df: z.number(), tail }),
    output: z.strictObject({ t: z.number() }),
    example: { p: 0.025, df: 12, tail: 'upper' },
    source: 'inversion of the tail; M. Abramowitz and I. A. Stegun, 1964, 26.7.1',
    run: (q) => ({ t: tQuantile(q) }),
  }),
  calcEntry({
    id: 'distributions/chi-squared-tail',
    input: z.strictObject({ x: z.number(), df: z.number(), tail }),
    output: probability,
    example: { x: 11.07, df: 5, tail: 'upper' },
    source: 'M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, 1964, 26.4.19',
    run: (q) => ({ probability: chiSquaredTail(q) }),
  }),
  calcEntry({
    id: 'distributions/chi-squared-quantile',
    input: z.strictObject({ p: z.number(), df: z.number(), tail }),
    output: z.strictObject({ x: z.number() }),
    example: { p: 0.05, df: 5, tail: 'upper' },
    source: 'inversion of the tail; M. Abramowitz and I. A. Stegun, 1964, 26.4.19',
    run: (q) => ({ x: chiSquaredQuantile(q) }),
  }),
  calcEntry({
    id: 'distributions/f-tail',
    input: z.strictObject({ f: z.number(), df1: z.number(), df2: z.number(), tail }),
    output: probability,
    example: { f: 4.6, df1: 2, df2: 9, tail: 'upper' },
    source: 'M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, 1964, 26.6.2',
    run: (q) => ({ probability: fTail(q) }),
  }),
  calcEntry({
    id: 'distributions/f-quantile',
    input: z.strictObject({ p: z.number(), df1: z.number(), df2: z.number(), tail }),
    output: z.strictObject({ f: z.number() }),
    example: { p: 0.05, df1: 2, df2: 9, tail: 'upper' },
    source: 'inversion of the tail; M. Abramowitz and I. A. Stegun, 1964, 26.6.2',
    run: (q) => ({ f: fQuantile(q) }),
  }),
  calcEntry({
    id: 'distributions/binomial-tail',
    input: z.strictObject({ k: z.number(), n: z.number(), share: z.number(), tail }),
    output: probability,
    example: { k: 8, n: 12, share: 0.5, tail: 'upper' },
    source: 'M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, 1964, 26.5.24',
    run: (q) => ({ probability: binomialTail(q) }),
  }),
  calcEntry({
    id: 'distributions/dunnett-tail',
    input: z.strictObject({ c: z.number(), ...againstControl }),
    output: bothTails,
    example: { c: 2.44, df: 15, controlCount: 6, armCounts: [6, 6], sides: 'two' },
    source: 'C. W. Dunnett, JASA 50, 1955',
    run: ({ c, df, sides, ...q }) =>
      atFlatFields(countField, () => dunnettTail({ c, df, sides, loadings: loadingsOf(q) })),
  }),
  calcEntry({
    id: 'distributions/dunnett-quantile',
    input: z.strictObject({ p: z.number(), ...againstControl }),
    output: z.strictObject({ c: z.number() }),
    example: { p: 0.05, df: 15, controlCount: 6, armCounts: [6, 6], sides: 'two' },
    source: 'C. W. Dunnett, JASA 50, 1955',
    run: ({ p, df, sides, ...q }) => ({
      c: atFlatFields(countField, () => dunnettQuantile({ p, df, sides, loadings: loadingsOf(q) })),
    }),
  }),
  calcEntry({
    id: 'distributions/studentized-range-tail',
    input: z.strictObject({ range: z.number(), groups: z.number(), df: z.number() }),
    output: bothTails,
    example: { range: 3.88, groups: 3, df: 10 },
    source: 'Y. Hochberg and A. C. Tamhane, Multiple Comparison Procedures, 1987',
    run: studentizedRangeTail,
  }),
  calcEntry({
    id: 'distributions/studentized-range-quantile',
    input: z.strictObject({ p: z.number(), groups: z.number(), df: z.number() }),
    output: z.strictObject({ range: z.number() }),
    example: { p: 0.05, groups: 3, df: 10 },
    source: 'Y. Hochberg and A. C. Tamhane, Multiple Comparison Procedures, 1987',
    run: (q) => ({ range: studentizedRangeQuantile(q) }),
  }),
  ...jointDistributionsEntries,
] as const
