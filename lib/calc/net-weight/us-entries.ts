import { z } from 'zod'
import { calcEntry } from '../entry'
import { NET_WEIGHT_CAUTIONS } from './types'
import { usAllowableVariationG } from './us-allowable-variation'
import { usCheckScale } from './us-check-scale'
import { US_DRYING_PRODUCTS } from './us-drying-allowance'
import { usLotCheck } from './us-lot-check'
import { usSamplingPlan } from './us-sampling-plan'

const cautions = z.array(z.enum(NET_WEIGHT_CAUTIONS))
const memory = 'from memory but for two rows: check the handbook in force'

export const usEntries = [
  calcEntry({
    id: 'net-weight/us-allowable-variation',
    input: z.strictObject({ labelledG: z.number() }),
    output: z.strictObject({ variationG: z.number(), cautions }),
    example: { labelledG: 680 },
    source: 'NIST Handbook 133, table 2-5, from memory but for two rows: check the handbook in force',
    run: usAllowableVariationG,
  }),
  calcEntry({
    id: 'net-weight/us-sampling-plan',
    input: z.strictObject({ lotPackages: z.number() }),
    output: z.strictObject({ samplePackages: z.number(), factor: z.number(), shortAllowed: z.number(), cautions }),
    example: { lotPackages: 180 },
    source:
      'NIST Handbook 133 (2026), chapter 2; table 2-1 from memory, its factor worked as t₀.₉₇₅(n − 1)/√n: check the handbook in force',
    run: usSamplingPlan,
  }),
  calcEntry({
    id: 'net-weight/us-lot-check',
    input: z.strictObject({
      lotPackages: z.number(),
      labelledG: z.number(),
      product: z.enum(US_DRYING_PRODUCTS),
      contentsG: z.array(z.number()),
    }),
    output: z.strictObject({
      meanErrorG: z.number(),
      sdG: z.number(),
      factor: z.number(),
      errorLimitG: z.number(),
      dryingAllowanceG: z.number(),
      isMeanAccepted: z.boolean(),
      shortageLimitG: z.number(),
      shortPackages: z.number(),
      shortAllowed: z.number(),
      isLotAccepted: z.boolean(),
      cautions,
    }),
    example: {
      lotPackages: 180,
      labelledG: 680,
      product: 'bread',
      contentsG: [683, 676, 689, 691, 680, 672, 686, 684, 679, 688, 681, 677],
    },
    source: `NIST Handbook 133 (2026), chapter 2 and table 2-3; table 2-1 from memory; table 2-5 ${memory}`,
    run: usLotCheck,
  }),
  calcEntry({
    id: 'net-weight/us-check-scale',
    input: z.strictObject({ labelledG: z.number(), divisionG: z.number(), capacityG: z.number() }),
    output: z.strictObject({
      variationG: z.number(),
      largestDivisionG: z.number(),
      usualDivisionG: z.number(),
      divisions: z.number(),
      isFineEnough: z.boolean(),
      hasEnoughDivisions: z.boolean(),
      isSuitable: z.boolean(),
      cautions,
    }),
    example: { labelledG: 680, divisionG: 2, capacityG: 6000 },
    source: `NIST Handbook 133 (2026), chapter 2; table 2-5 ${memory}`,
    run: usCheckScale,
  }),
] as const
