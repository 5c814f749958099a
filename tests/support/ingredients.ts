import { v7 as uuid } from 'uuid'
import { db } from '../../lib/db/client'
import type { Allergen, Figure, IngredientKind } from '../../lib/db/generated/enums'
import type { FormulaIngredientKey } from '../../seed/formulas'
import { testNow } from './bakery'

type Sample = { name: string; kind: IngredientKind; allergens: Allergen[]; figures: Partial<Record<Figure, number>> }

/** Invented ingredients with round figures; nobody looked any of them up. */
const samples: Record<FormulaIngredientKey, Sample> = {
  breadFlour: { name: 'Bread flour', kind: 'flour', allergens: ['gluten'], figures: { water: 14, protein: 12 } },
  wholemealFlour: {
    name: 'Wholemeal flour',
    kind: 'flour',
    allergens: ['gluten'],
    figures: { water: 13, protein: 12 },
  },
  ryeFlour: { name: 'Rye flour', kind: 'flour', allergens: ['gluten'], figures: { water: 13 } },
  water: { name: 'Water', kind: 'water', allergens: [], figures: { water: 100 } },
  salt: { name: 'Salt', kind: 'salt', allergens: [], figures: { water: 0, salt: 100 } },
  freshYeast: { name: 'Fresh yeast', kind: 'leaven', allergens: [], figures: { water: 70 } },
  butter: { name: 'Butter', kind: 'fat', allergens: ['milk'], figures: { water: 16, fat: 82 } },
  milk: { name: 'Whole milk', kind: 'dairy', allergens: ['milk'], figures: { water: 88, fat: 3.5 } },
  skimMilkPowder: { name: 'Skim milk powder', kind: 'dairy', allergens: ['milk'], figures: { water: 4 } },
  honey: { name: 'Honey', kind: 'sugar', allergens: [], figures: { water: 18, sugars: 80 } },
  maltFlour: { name: 'Diastatic malt flour', kind: 'malt', allergens: ['gluten'], figures: {} },
  sunflowerOil: { name: 'Sunflower oil', kind: 'fat', allergens: [], figures: { water: 0, fat: 100 } },
  rolledOats: { name: 'Rolled oats', kind: 'seed_or_grain', allergens: ['gluten'], figures: { water: 9 } },
  sugar: { name: 'Sugar', kind: 'sugar', allergens: [], figures: { water: 0, sugars: 100 } },
}

/** Puts the samples into a bakery's stores, all allergens checked. @returns their ids */
export async function makeIngredients(
  bakeryId: string,
  now: Date = testNow,
): Promise<Record<FormulaIngredientKey, string>> {
  const ids = {} as Record<FormulaIngredientKey, string>
  for (const [key, { figures, ...sample }] of Object.entries(samples) as [FormulaIngredientKey, Sample][]) {
    ids[key] = uuid()
    await db().ingredient.create({
      data: {
        bakeryId,
        id: ids[key],
        ...sample,
        labelName: sample.name,
        allergensCheckedAt: now,
        dustCaution: sample.kind === 'malt',
        note: '',
        revision: 1,
        createdAt: now,
      },
    })
    const given = Object.entries(figures) as [Figure, number][]
    await db().ingredientFigure.createMany({
      data: given.map(([figure, gPer100G]) => ({
        bakeryId,
        ingredientId: ids[key],
        figure,
        gPer100G,
        source: 'invented',
      })),
    })
  }
  return ids
}
