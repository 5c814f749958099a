import { z } from 'zod'
import { calcEntry } from '../entry'
import { declaredAllergens } from './declared-allergens'
import { declaredEntries } from './declared-entries'
import { energy } from './energy'
import { ingredientList } from './ingredient-list'
import { nutritionPer100g, NUTRITION_WARNINGS } from './nutrition-per-100g'
import { DECLARED_NUTRIENTS, roundDeclared } from './round-declared'
import { saltFromSodiumG } from './salt-from-sodium'
import { servingEntries } from './serving-entries'
import {
  ADDITIVE_CLASSES,
  ALLERGEN_GROUPS,
  ALLERGEN_STATEMENTS,
  ALLERGENS,
  EXEMPT_MIXES,
  LABEL_CAUTIONS,
  NAMINGS,
  REGIONS,
} from './types'

const region = z.enum(REGIONS)
const allergen = z.enum(ALLERGENS)
const group = z.enum(ALLERGEN_GROUPS)
const additiveClass = z.enum(ADDITIVE_CLASSES)
const isDraft = z.literal(true)
const cautions = z.array(z.enum(LABEL_CAUTIONS))
const pct = z.number().optional()
const regulation = 'Regulation (EU) No 1169/2011'

export const labelEntries = [
  calcEntry({
    id: 'label/ingredient-list',
    input: z.strictObject({
      lines: z.array(
        z.strictObject({
          name: z.string(),
          massG: z.number(),
          isAddedWater: z.boolean().optional(),
          isOpened: z.boolean().optional(),
          additiveClass: additiveClass.optional(),
          eNumber: z.string().optional(),
          leftInBreadG: z.number().optional(),
          exemptMix: z.enum(EXEMPT_MIXES).optional(),
        }),
      ),
      parts: z.array(
        z.strictObject({
          of: z.string(),
          name: z.string(),
          sharePct: z.number(),
          isAddedWater: z.boolean().optional(),
          additiveClass: additiveClass.optional(),
          eNumber: z.string().optional(),
        }),
      ),
      allergens: z.array(
        z.strictObject({ of: z.string(), allergen: z.enum(ALLERGEN_STATEMENTS), species: z.string().optional() }),
      ),
      bakedMassG: z.number(),
      region,
    }),
    output: z.strictObject({
      isDraft,
      entries: z.array(
        z.strictObject({
          place: z.number(),
          name: z.string(),
          inside: z.string().nullable(),
          massG: z.number(),
          pctOfBread: z.number(),
          isEmphasised: z.boolean(),
          sourceInBrackets: z.string().nullable(),
          sayAs: z.enum(NAMINGS),
          additiveClass: additiveClass.nullable(),
          eNumber: z.string().nullable(),
          mayStandLast: z.boolean(),
          mayBeLeftOut: z.boolean(),
        }),
      ),
      addedWaterG: z.number(),
      isWaterLeftOut: z.boolean(),
      lastUpToPct: z.number().nullable(),
      allergens: z.array(z.strictObject({ of: z.string(), group, named: allergen, species: z.string().nullable() })),
      containsSentence: z.string().nullable(),
      withoutStatement: z.array(z.string()),
      cautions,
    }),
    example: {
      lines: [
        { name: 'rye flour', massG: 600 },
        { name: 'water', massG: 520, isAddedWater: true },
        { name: 'wheat flour', massG: 400 },
        { name: 'seed mix', massG: 90, isOpened: true },
        { name: 'salt', massG: 20 },
        { name: 'yeast', massG: 12 },
        { name: 'ascorbic acid', massG: 0.05, additiveClass: 'flour-treatment-agent', eNumber: 'E 300' },
      ],
      parts: [
        { of: 'seed mix', name: 'sunflower seeds', sharePct: 60 },
        { of: 'seed mix', name: 'sesame seeds', sharePct: 40 },
      ],
      allergens: [
        { of: 'rye flour', allergen: 'rye' },
        { of: 'wheat flour', allergen: 'wheat' },
        { of: 'sesame seeds', allergen: 'sesame' },
      ],
      bakedMassG: 1440,
      region: 'eu',
    },
    source: `${regulation}, Articles 18 to 21 and Annex VII, Part E from memory; 21 CFR 101.4(a)(2), the rest of 101.4 from memory; FALCPA (2004) and FASTER Act (2021)`,
    run: ingredientList,
  }),
  calcEntry({
    id: 'label/declared-allergens',
    input: z.strictObject({ present: z.array(allergen), region }),
    output: z.strictObject({
      isDraft,
      declared: z.array(z.strictObject({ group, named: allergen })),
      notListed: z.array(allergen),
      cautions,
    }),
    example: { present: ['rye', 'wheat', 'milk', 'lupin'], region: 'us' },
    source: `${regulation}, Annex II; FALCPA (2004) and FASTER Act (2021)`,
    run: declaredAllergens,
  }),
  calcEntry({
    id: 'label/nutrition-per-100g',
    input: z.strictObject({
      lines: z.array(
        z.strictObject({
          name: z.string(),
          massG: z.number(),
          fatPct: pct,
          saturatesPct: pct,
          carbohydratePct: pct,
          sugarsPct: pct,
          fibrePct: pct,
          proteinPct: pct,
          sodiumMgPer100g: pct,
        }),
      ),
      carbohydrateIncludesFibre: z.boolean(),
      bakedMassG: z.number(),
    }),
    output: z.strictObject({
      isDraft,
      rows: z.array(
        z.strictObject({
          nutrient: z.enum(DECLARED_NUTRIENTS),
          per100g: z.number(),
          roundedValue: z.number(),
          isNegligible: z.boolean(),
          isComplete: z.boolean(),
        }),
      ),
      notStated: z.array(
        z.strictObject({
          name: z.string(),
          nutrient: z.enum(['fat', 'saturates', 'carbohydrate', 'sugars', 'fibre', 'protein', 'salt']),
        }),
      ),
      warnings: z.array(z.strictObject({ code: z.enum(NUTRITION_WARNINGS), name: z.string() })),
      cautions,
    }),
    example: {
      lines: [
        {
          name: 'flour',
          massG: 1000,
          fatPct: 1.5,
          saturatesPct: 0.2,
          carbohydratePct: 72,
          sugarsPct: 0.6,
          fibrePct: 3,
          proteinPct: 11,
          sodiumMgPer100g: 2,
        },
        {
          name: 'water',
          massG: 680,
          fatPct: 0,
          saturatesPct: 0,
          carbohydratePct: 0,
          sugarsPct: 0,
          fibrePct: 0,
          proteinPct: 0,
          sodiumMgPer100g: 0,
        },
        {
          name: 'salt',
          massG: 18,
          fatPct: 0,
          saturatesPct: 0,
          carbohydratePct: 0,
          sugarsPct: 0,
          fibrePct: 0,
          proteinPct: 0,
          sodiumMgPer100g: 39000,
        },
      ],
      carbohydrateIncludesFibre: true,
      bakedMassG: 1480,
    },
    source: `${regulation}, Articles 30 and 31, Annexes I, XIV and XV`,
    run: nutritionPer100g,
  }),
  calcEntry({
    id: 'label/energy',
    input: z.strictObject({
      fatG: z.number(),
      carbohydrateG: z.number(),
      polyolsG: z.number(),
      fibreG: z.number(),
      proteinG: z.number(),
      alcoholG: z.number(),
      organicAcidsG: z.number(),
      salatrimsG: z.number().optional(),
      erythritolG: z.number().optional(),
    }),
    output: z.strictObject({ energyKj: z.number(), energyKcal: z.number() }),
    example: { fatG: 2.4, carbohydrateG: 46, polyolsG: 0, fibreG: 4.1, proteinG: 8.7, alcoholG: 0, organicAcidsG: 0 },
    source: `${regulation}, Annex XIV`,
    run: (q) => energy({ ...q, salatrimsG: q.salatrimsG ?? 0, erythritolG: q.erythritolG ?? 0 }),
  }),
  calcEntry({
    id: 'label/round-declared',
    input: z.strictObject({ nutrient: z.enum(DECLARED_NUTRIENTS), value: z.number() }),
    output: z.strictObject({ roundedValue: z.number(), isNegligible: z.boolean() }),
    example: { nutrient: 'salt', value: 1.163 },
    source:
      'European Commission, Guidance on tolerances for nutrient values, December 2012, table 4, as reproduced by a Greek food consultancy',
    run: roundDeclared,
  }),
  calcEntry({
    id: 'label/salt-from-sodium',
    input: z.strictObject({ sodiumMg: z.number() }),
    output: z.strictObject({ saltG: z.number() }),
    example: { sodiumMg: 465 },
    source: `${regulation}, Annex I, 11`,
    run: (q) => ({ saltG: saltFromSodiumG(q) }),
  }),
  ...servingEntries,
  ...declaredEntries,
] as const
