import { z } from 'zod'
import { calcEntry } from '../entry'
import { comparePh } from './compare-ph'
import { titratableAcidity } from './titratable-acidity'
import { waterPhaseSalt } from './water-phase-salt'

export const acidityEntries = [
  calcEntry({
    id: 'acidity/titratable-acidity',
    input: z.strictObject({ sampleMassG: z.number(), alkaliMl: z.number(), alkaliMolPerL: z.number() }),
    output: z.strictObject({ acidityMlPer10g: z.number(), lacticAcidPct: z.number() }),
    example: { sampleMassG: 10, alkaliMl: 9.6, alkaliMolPerL: 0.1 },
    source: 'definition; common practice, no source. Molar mass of lactic acid from memory',
    run: titratableAcidity,
  }),
  calcEntry({
    id: 'acidity/compare-ph',
    input: z.strictObject({ controlPh: z.number(), armPh: z.number() }),
    output: z.strictObject({ differencePh: z.number(), timesAsAcid: z.number() }),
    example: { controlPh: 5.4, armPh: 4.9 },
    source: 'definition of pH; common practice, no source',
    run: comparePh,
  }),
  calcEntry({
    id: 'acidity/water-phase-salt',
    input: z.strictObject({ saltMassG: z.number(), waterMassG: z.number() }),
    output: z.strictObject({
      waterPhaseSaltPct: z.number(),
      warnings: z.array(z.enum(['above-saturation', 'no-proof-of-keeping'])),
    }),
    example: { saltMassG: 20, waterMassG: 770 },
    source: 'definition, as in US food-safety guidance on salted fish; from memory',
    run: waterPhaseSalt,
  }),
] as const
