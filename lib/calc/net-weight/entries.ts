import { z } from 'zod'
import { calcEntry } from '../entry'
import { acceptBatchContents } from './accept-batch-contents'
import { acceptBatchMean } from './accept-batch-mean'
import { acceptanceChance } from './acceptance-chance'
import { acceptancePlan } from './acceptance-plan'
import { averageWeightCheck } from './average-weight-check'
import { judgeLot } from './judge-lot'
import { samplePackages } from './sample-packages'
import { tolerableNegativeErrorG } from './tolerable-negative-error'
import { NET_WEIGHT_CAUTIONS } from './types'
import { usEntries } from './us-entries'

const caution = z.enum(NET_WEIGHT_CAUTIONS)
const lot = z.strictObject({ nominalG: z.number(), contentsG: z.array(z.number()) })
const loaves = {
  nominalG: 500,
  contentsG: [504, 498, 507, 511, 502, 495, 509, 503, 506, 499, 501, 508, 505, 497, 510, 503, 500, 506, 502, 504],
}
const ukGuidance = 'UK trading standards guidance on the Weights and Measures (Packaged Goods) Regulations 2006'

export const netWeightEntries = [
  calcEntry({
    id: 'net-weight/tolerable-negative-error',
    input: z.strictObject({ nominalG: z.number() }),
    output: z.strictObject({ errorG: z.number(), lowerLimitG: z.number(), absoluteLimitG: z.number() }),
    example: { nominalG: 750 },
    source: 'Council Directive 76/211/EEC, Annex I, 2.4 (above 1000 g from memory)',
    run: tolerableNegativeErrorG,
  }),
  calcEntry({
    id: 'net-weight/judge-lot',
    input: lot,
    output: z.strictObject({
      packages: z.number(),
      meanG: z.number(),
      lowerLimitG: z.number(),
      absoluteLimitG: z.number(),
      belowLower: z.number(),
      belowLowerShare: z.number(),
      belowAbsolute: z.number(),
      isMeanEnough: z.boolean(),
      areFewBelowLower: z.boolean(),
      areNoneBelowAbsolute: z.boolean(),
      keepsAllRules: z.boolean(),
      cautions: z.array(caution),
    }),
    example: loaves,
    source: ukGuidance,
    run: judgeLot,
  }),
  calcEntry({
    id: 'net-weight/sample-packages',
    input: z.strictObject({ batchPackages: z.number(), isDestructive: z.boolean() }),
    output: z.strictObject({ samplePackages: z.number() }),
    example: { batchPackages: 320, isDestructive: false },
    source: 'Council Directive 76/211/EEC, Annex II, 2.1.3, 2.2.2 and 2.3',
    run: (q) => ({ samplePackages: samplePackages(q) }),
  }),
  calcEntry({
    id: 'net-weight/accept-batch-mean',
    input: z.strictObject({ ...lot.shape, batchPackages: z.number(), isDestructive: z.boolean() }),
    output: z.strictObject({
      meanG: z.number(),
      sdG: z.number(),
      factor: z.number(),
      leastMeanG: z.number(),
      isMeanAccepted: z.boolean(),
      belowLower: z.number(),
      belowAbsolute: z.number(),
      isAccepted: z.boolean(),
      cautions: z.array(caution),
    }),
    example: { ...loaves, batchPackages: 320, isDestructive: true },
    source:
      'Council Directive 76/211/EEC, Annex I, 1.3, and Annex II, 2.3; a mean at the limit as in SI 2006/659, schedule 2, 4.5',
    run: acceptBatchMean,
  }),
  calcEntry({
    id: 'net-weight/acceptance-plan',
    input: z.strictObject({ batchPackages: z.number(), isDestructive: z.boolean() }),
    output: z.strictObject({
      stages: z.array(z.strictObject({ packages: z.number(), acceptAt: z.number(), rejectAt: z.number() })),
    }),
    example: { batchPackages: 400, isDestructive: false },
    source: 'Council Directive 76/211/EEC, Annex II, 2.1 and 2.2',
    run: (q) => ({ stages: acceptancePlan(q).map((stage) => ({ ...stage })) }),
  }),
  calcEntry({
    id: 'net-weight/acceptance-chance',
    input: z.strictObject({ batchPackages: z.number(), isDestructive: z.boolean(), defectiveShare: z.number() }),
    output: z.strictObject({
      acceptedShare: z.number(),
      firstDecidesShare: z.number(),
      meanPackages: z.number(),
      cautions: z.array(caution),
    }),
    example: { batchPackages: 400, isDestructive: false, defectiveShare: 0.025 },
    source: 'Council Directive 76/211/EEC, Annex II, 2.2, for the plan; binomial distribution',
    run: acceptanceChance,
  }),
  calcEntry({
    id: 'net-weight/accept-batch-contents',
    input: z.strictObject({ ...lot.shape, batchPackages: z.number(), isDestructive: z.boolean() }),
    output: z.strictObject({
      lowerLimitG: z.number(),
      absoluteLimitG: z.number(),
      defective: z.number(),
      belowAbsolute: z.number(),
      acceptAt: z.number(),
      rejectAt: z.number(),
      outcome: z.enum(['accepted', 'refused', 'take-second-sample']),
      nextPackages: z.nullable(z.number()),
      cautions: z.array(caution),
    }),
    example: { ...loaves, batchPackages: 320, isDestructive: true },
    source: 'Council Directive 76/211/EEC, Annex I, 1.3, and Annex II, 2.2',
    run: acceptBatchContents,
  }),
  calcEntry({
    id: 'net-weight/average-weight-check',
    input: lot,
    output: z.strictObject({
      meanG: z.number(),
      sdG: z.number(),
      leastMeanG: z.number(),
      decidedBy: z.enum(['mean', 'lower-limit', 'absolute-limit']),
      marginG: z.number(),
      marginStandardErrorG: z.number(),
      expectedBelowLowerShare: z.number(),
      expectedBelowAbsoluteShare: z.number(),
      belowLower: z.number(),
      belowAbsolute: z.number(),
      isWithinRules: z.boolean(),
      cautions: z.array(caution),
    }),
    example: loaves,
    source: `${ukGuidance}; one package in 10,000 for 'none': from memory`,
    run: averageWeightCheck,
  }),
  ...usEntries,
] as const
