import { z } from 'zod'
import { calcEntry } from '../entry'
import { EGG_CAUTIONS, eggsPerPound } from './eggs-per-pound'
import { INTAKE_NUTRIENTS, portionIntake } from './portion-intake'
import { roundUs, US_NUTRIENTS } from './round-us'
import { usServing } from './us-serving'

const optionalNumber = z.optional(z.number())

export const servingEntries = [
  calcEntry({
    id: 'label/portion-intake',
    input: z.strictObject({
      portionG: z.number(),
      energyKj: optionalNumber,
      energyKcal: optionalNumber,
      fatG: optionalNumber,
      saturatesG: optionalNumber,
      carbohydrateG: optionalNumber,
      sugarsG: optionalNumber,
      proteinG: optionalNumber,
      saltG: optionalNumber,
    }),
    output: z.strictObject({
      isDraft: z.literal(true),
      rows: z.array(
        z.strictObject({ nutrient: z.enum(INTAKE_NUTRIENTS), inPortion: z.number(), intakePct: z.number() }),
      ),
      cautions: z.array(z.enum(['draft-for-competent-person', 'local-rules-decide', 'average-adult'])),
    }),
    example: {
      portionG: 45,
      energyKj: 1064,
      energyKcal: 252,
      fatG: 3.4,
      saturatesG: 0.6,
      carbohydrateG: 45.2,
      sugarsG: 2.9,
      proteinG: 8.8,
      saltG: 1.15,
    },
    source:
      'Regulation (EU) No 1169/2011, Annex XIII, part B, as on the UK health service’s page; Articles 32 and 33 from memory',
    run: portionIntake,
  }),
  calcEntry({
    id: 'label/round-us',
    input: z.strictObject({ nutrient: z.enum(US_NUTRIENTS), value: z.number() }),
    output: z.strictObject({ roundedValue: z.number(), say: z.enum(['zero', 'less-than', 'figure']) }),
    example: { nutrient: 'sodium', value: 187.4 },
    source: '21 CFR 101.9(c), as in the FDA Food Labeling Guide, appendix H, 2009; cholesterol from memory',
    run: roundUs,
  }),
  calcEntry({
    id: 'label/us-serving',
    input: z.strictObject({ pieceG: z.number(), packageG: z.number() }),
    output: z.strictObject({
      isDraft: z.literal(true),
      leastPieces: z.number(),
      mostPieces: z.number(),
      servingG: z.number(),
      servings: z.number(),
      cautions: z.array(z.enum(['draft-for-competent-person', 'local-rules-decide', 'rule-of-2016'])),
    }),
    example: { pieceG: 38, packageG: 680 },
    source:
      '21 CFR 101.12(b), row as quoted from a law school’s copy; FDA inspection guide, attachment 6 (older than the rule of 2016)',
    run: usServing,
  }),
  calcEntry({
    id: 'label/eggs-per-pound',
    input: z.strictObject({ eggSolidsPct: z.number() }),
    output: z.strictObject({
      isDraft: z.literal(true),
      eggsInLb: z.number(),
      declaredEggs: z.number(),
      cautions: z.array(z.enum(EGG_CAUTIONS)),
    }),
    example: { eggSolidsPct: 3.4 },
    source: '21 CFR 136.115(b)',
    run: eggsPerPound,
  }),
] as const
