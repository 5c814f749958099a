import { z } from 'zod'
import { calcEntry } from '../entry'
import { levain } from './levain'
import { preFerment } from './pre-ferment'
import { scald } from './scald'
import { soaker } from './soaker'
import { sourStages } from './sour-stages'

export const prefermentEntries = [
  calcEntry({
    id: 'preferment/pre-ferment',
    input: z.strictObject({
      flourMassG: z.number(),
      doughHydrationPct: z.number(),
      preFermentedPct: z.number(),
      preFermentHydrationPct: z.number(),
    }),
    output: z.strictObject({
      preFermentFlourG: z.number(),
      preFermentWaterG: z.number(),
      preFermentMassG: z.number(),
      doughFlourG: z.number(),
      doughWaterG: z.number(),
    }),
    example: { flourMassG: 8000, doughHydrationPct: 66, preFermentedPct: 20, preFermentHydrationPct: 100 },
    source: 'mass balance; common practice, no source',
    run: preFerment,
  }),
  calcEntry({
    id: 'preferment/levain',
    input: z.strictObject({
      levainMassG: z.number(),
      levainHydrationPct: z.number(),
      starterHydrationPct: z.number(),
      starterBy: z.enum(['fresh-flour', 'mix']),
      starterPct: z.number(),
    }),
    output: z.strictObject({
      starterG: z.number(),
      freshFlourG: z.number(),
      freshWaterG: z.number(),
      flourInAllG: z.number(),
      waterInAllG: z.number(),
      starterOnFreshFlourPct: z.number(),
      starterInMixPct: z.number(),
    }),
    example: {
      levainMassG: 1500,
      levainHydrationPct: 80,
      starterHydrationPct: 100,
      starterBy: 'fresh-flour',
      starterPct: 15,
    },
    source: 'US bread newsletter, 2023: inoculation is on fresh flour; mass balance',
    run: levain,
  }),
  calcEntry({
    id: 'preferment/sour-stages',
    input: z.strictObject({
      souredFlourG: z.number(),
      longStandingFactor: z.number(),
      stages: z.array(z.strictObject({ hoursH: z.number(), stageHydrationPct: z.number() })),
    }),
    output: z.strictObject({
      starterG: z.number(),
      stages: z.array(
        z.strictObject({
          flourInAllG: z.number(),
          waterInAllG: z.number(),
          addedFlourG: z.number(),
          addedWaterG: z.number(),
        }),
      ),
    }),
    example: {
      souredFlourG: 2400,
      longStandingFactor: 1.5,
      stages: [
        { hoursH: 6, stageHydrationPct: 110 },
        { hoursH: 8, stageHydrationPct: 60 },
        { hoursH: 3, stageHydrationPct: 90 },
      ],
    },
    source: 'German bakers’ glossary on the web, entry on three-stage sour, 2015',
    run: sourStages,
  }),
  calcEntry({
    id: 'preferment/scald',
    input: z.strictObject({
      flourMassG: z.number(),
      doughHydrationPct: z.number(),
      scaldedPct: z.number(),
      scaldHydrationPct: z.number(),
      by: z.enum(['weighed', 'expected-loss']),
      scaldWeighedG: z.optional(z.number()),
      lossOfWaterPct: z.optional(z.number()),
    }),
    output: z.strictObject({
      scaldFlourG: z.number(),
      scaldWaterG: z.number(),
      evaporatedG: z.number(),
      scaldMassG: z.number(),
      waterInScaldG: z.number(),
      doughFlourG: z.number(),
      doughWaterG: z.number(),
      tooDryPctFlour: z.number(),
      cautions: z.array(z.enum(['boiling-water-burns'])),
    }),
    example: {
      flourMassG: 6000,
      doughHydrationPct: 72,
      scaldedPct: 8,
      scaldHydrationPct: 250,
      by: 'weighed',
      scaldWeighedG: 1585,
    },
    source: 'mass balance; common practice, no source',
    run: scald,
  }),
  calcEntry({
    id: 'preferment/soaker',
    input: z.strictObject({
      flourMassG: z.number(),
      waterMassG: z.number(),
      soakedMassG: z.number(),
      soakPct: z.number(),
      pouredOffG: z.number(),
    }),
    output: z.strictObject({
      soakWaterG: z.number(),
      waterToWeighG: z.number(),
      doughWaterOnFlourPct: z.number(),
      allWaterOnFlourPct: z.number(),
      allWaterOnFlourAndSoakedPct: z.number(),
    }),
    example: { flourMassG: 6000, waterMassG: 4000, soakedMassG: 900, soakPct: 110, pouredOffG: 60 },
    source: 'California raisin growers’ baking page (liquid left over); mass balance',
    run: soaker,
  }),
] as const
