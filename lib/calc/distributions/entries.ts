import { z } from 'zod'
import { calcEntry } from '../entry'
import { noncentralFTail } from './noncentral-f-tail'
import { noncentralTTail } from './noncentral-t-tail'

const tail = z.enum(['lower', 'upper'])

export const distributionsEntries = [
  // Noncentral kinds and joint probabilities of several comparisons
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
] as const
