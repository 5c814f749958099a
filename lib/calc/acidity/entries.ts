import { z } from 'zod'
import { calcEntry } from '../entry'
import { comparePh } from './compare-ph'
import { ACIDITY_WARNINGS, titratableAcidity } from './titratable-acidity'
import { waterPhaseSalt } from './water-phase-salt'

export const acidityEntries = [
  calcEntry({
    id: 'acidity/titratable-acidity',
    input: z.strictObject({
      sampleMassG: z.number(),
      alkaliMl: z.number(),
      alkaliMolPerL: z.number(),
      endPointPh: z.number(),
    }),
    output: z.strictObject({
      acidityMlPer10g: z.number(),
      lacticAcidPct: z.number(),
      endPointPh: z.number(),
      warnings: z.array(z.enum(ACIDITY_WARNINGS)),
    }),
    example: { sampleMassG: 10, alkaliMl: 9.6, alkaliMolPerL: 0.1, endPointPh: 8.5 },
    source:
      'ingredient company, technical compendium, rye sours: 0.1 mol/L on 10 g to pH 8.5. Molar mass of lactic acid from memory',
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
