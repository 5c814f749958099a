import { z } from 'zod'
import { calcEntry } from '../entry'
import { doseChain } from './dose-chain'
import { DUST_CAUTIONS } from './dust-cautions'

export const chainEntries = [
  calcEntry({
    id: 'dosing/dose-chain',
    input: z.strictObject({
      doseMgPerKgFlour: z.number(),
      flourMassG: z.number(),
      activeShare: z.number(),
      strengthShare: z.number(),
      strengthErrorShare: z.number(),
      errorShare: z.number(),
      coverageFactor: z.number(),
      scales: z.array(
        z.strictObject({ id: z.string(), resolutionG: z.number(), repeatabilityG: z.number(), capacityG: z.number() }),
      ),
      mostCarrierG: z.number(),
      mostPremixG: z.number(),
    }),
    output: z.strictObject({
      activeMg: z.number(),
      productMg: z.number(),
      outcome: z.enum(['direct', 'premix', 'not-possible']),
      weighings: z.array(
        z.strictObject({
          step: z.number(),
          what: z.enum(['take', 'carrier', 'portion']),
          scaleId: z.string(),
          massG: z.number(),
          readingG: z.number(),
          errorShare: z.number(),
          soFarErrorShare: z.number(),
        }),
      ),
      weighingErrorShare: z.nullable(z.number()),
      activeErrorShare: z.nullable(z.number()),
      carrierInPortionG: z.nullable(z.number()),
      premixMadeG: z.nullable(z.number()),
      productLeftG: z.nullable(z.number()),
      warnings: z.array(z.enum(['more-than-a-tenth-of-flour'])),
      cautions: z.array(z.enum(DUST_CAUTIONS)),
    }),
    example: {
      doseMgPerKgFlour: 40,
      flourMassG: 12_000,
      activeShare: 0.95,
      strengthShare: 1,
      strengthErrorShare: 0.02,
      errorShare: 0.05,
      coverageFactor: 2,
      scales: [
        { id: 'bench', resolutionG: 1, repeatabilityG: 0.5, capacityG: 15_000 },
        { id: 'fine', resolutionG: 0.1, repeatabilityG: 0.05, capacityG: 1000 },
      ],
      mostCarrierG: 600,
      mostPremixG: 2000,
    },
    source: 'mass balance; law of propagation of uncertainty, JCGM 100:2008 (GUM), 5.1.2 and 5.1.6',
    run: (q) => ({ ...doseChain(q), cautions: [...DUST_CAUTIONS] }),
  }),
] as const
