import { z } from 'zod'
import { calcEntry } from '../entry'
import { atFlatFields } from '../flat-fields'
import { correlationFromPairs } from './correlation-from-pairs'
import { multivariateTQuantile } from './multivariate-t-quantile'
import { multivariateTTail } from './multivariate-t-tail'
import { noncentralFTail } from './noncentral-f-tail'
import { noncentralTTail } from './noncentral-t-tail'

const tail = z.enum(['lower', 'upper'])
const sides = z.enum(['one', 'two'])
const byLattice = { errorEstimate: z.number(), method: z.enum(['shifted-richtmyer-lattice']) }

export const jointDistributionsEntries = [
  calcEntry({
    id: 'distributions/noncentral-t-tail',
    input: z.strictObject({ t: z.number(), df: z.number(), noncentrality: z.number(), tail }),
    output: z.strictObject({ probability: z.number() }),
    example: { t: 2.101, df: 18, noncentrality: 2, tail: 'upper' },
    source: 'Johnson, Kotz & Balakrishnan (1995), Continuous Univariate Distributions 2, chapter 31',
    run: (q) => ({ probability: noncentralTTail(q) }),
  }),
  calcEntry({
    id: 'distributions/noncentral-f-tail',
    input: z.strictObject({ f: z.number(), df1: z.number(), df2: z.number(), noncentrality: z.number(), tail }),
    output: z.strictObject({ probability: z.number() }),
    example: { f: 3.24, df1: 3, df2: 16, noncentrality: 5, tail: 'upper' },
    source: 'Johnson, Kotz & Balakrishnan (1995), Continuous Univariate Distributions 2, chapter 30',
    run: (q) => ({ probability: noncentralFTail(q) }),
  }),
  calcEntry({
    id: 'distributions/multivariate-t-tail',
    input: z.strictObject({ c: z.number(), df: z.number(), pairs: z.array(z.number()), sides }),
    output: z.strictObject({ lower: z.number(), upper: z.number(), ...byLattice }),
    example: { c: 2.5, df: 9, pairs: [0.5, 0.52, 0.46], sides: 'two' },
    source:
      'Genz (1992), J. Comput. Graph. Stat. 1; Genz & Bretz (2009), Computation of Multivariate Normal and t Probabilities',
    run: ({ pairs, ...q }) =>
      atFlatFields({ correlation: 'pairs' }, () =>
        multivariateTTail({ ...q, correlation: correlationFromPairs(pairs) }),
      ),
  }),
  calcEntry({
    id: 'distributions/multivariate-t-quantile',
    input: z.strictObject({ p: z.number(), df: z.number(), pairs: z.array(z.number()), sides }),
    output: z.strictObject({ c: z.number(), ...byLattice }),
    example: { p: 0.05, df: 9, pairs: [0.5, 0.52, 0.46], sides: 'two' },
    source:
      'Genz (1992), J. Comput. Graph. Stat. 1; Genz & Bretz (2009), Computation of Multivariate Normal and t Probabilities',
    run: ({ pairs, ...q }) =>
      atFlatFields({ correlation: 'pairs' }, () =>
        multivariateTQuantile({ ...q, correlation: correlationFromPairs(pairs) }),
      ),
  }),
] as const
