import type { Caller } from '../lib/kitchen/caller'
import { dayInZone } from '../lib/kitchen/day-in-zone'
import { addEquipment } from '../lib/kitchen/stores/add-equipment'
import { addIngredient } from '../lib/kitchen/stores/add-ingredient'
import { enterPrice } from '../lib/kitchen/stores/enter-price'
import type { CompositionRow } from './composition'
import { must } from './must'
import { demoBakery } from './people'
import { demoEquipment, demoIngredients, inventedNote, type DemoIngredient } from './stores-data'

export type DemoStores = {
  ingredients: Record<keyof typeof demoIngredients, string>
  equipment: Record<keyof typeof demoEquipment, string>
}

/** Fills the stores of the invented bakery as its head baker, and gives the ids by key. The first prices hold from that day. */
export async function seedStores(head: Caller): Promise<DemoStores> {
  const ids: [string, string][] = []
  for (const [key, ingredient] of Object.entries<DemoIngredient>(demoIngredients))
    ids.push([key, await addDemoIngredient(head, ingredient)])
  const equipmentIds: [string, string][] = []
  for (const [key, one] of Object.entries(demoEquipment))
    equipmentIds.push([key, must(await addEquipment.call(head, one)).equipmentId])
  return {
    ingredients: Object.fromEntries(ids) as DemoStores['ingredients'],
    equipment: Object.fromEntries(equipmentIds) as DemoStores['equipment'],
  }
}

async function addDemoIngredient(head: Caller, ingredient: DemoIngredient): Promise<string> {
  const { row, allergens, prices } = ingredient
  const { ingredientId } = must(
    await addIngredient.call(head, {
      name: ingredient.name,
      labelName: ingredient.labelName,
      kind: ingredient.kind,
      active: ingredient.active ?? null,
      customary: ingredient.customary ?? null,
      allergens: allergens ?? [],
      allergenCheck: allergens ? 'checked-now' : 'unknown',
      dustCaution: ingredient.dust ?? false,
      note: [ingredient.note, row && `Figures of: ${row.name}.`, inventedNote].filter(Boolean).join(' '),
      figures: row ? figuresOf(row) : {},
    }),
  )
  await enterDemoPrice(head, ingredientId, ingredient, prices[0])
  return ingredientId
}

/** Enters what the suppliers have asked for since a later day, where it is another price. */
export async function seedNewPrices(head: Caller, { ingredients }: DemoStores): Promise<void> {
  for (const [key, ingredient] of Object.entries<DemoIngredient>(demoIngredients)) {
    const [, price] = ingredient.prices
    if (price !== undefined)
      await enterDemoPrice(head, ingredients[key as keyof typeof demoIngredients], ingredient, price)
  }
}

async function enterDemoPrice(
  head: Caller,
  ingredientId: string,
  { pack }: DemoIngredient,
  packPrice: string,
): Promise<void> {
  const holdsFrom = dayInZone(head.now ? head.now() : new Date(), demoBakery.timeZone)
  must(
    await enterPrice.call(head, { ingredientId, holdsFrom, packMassG: pack.massG, packPrice, supplier: pack.supplier }),
  )
}

function figuresOf({ water, protein, fat, carbohydrate, sugars, fibre, salt, source }: CompositionRow) {
  const figures = { water, protein, fat, carbohydrate, sugars, fibre, salt }
  return Object.fromEntries(
    Object.entries(figures).flatMap(([figure, gPer100G]) =>
      gPer100G === undefined ? [] : [[figure, { gPer100G, source }]],
    ),
  )
}
