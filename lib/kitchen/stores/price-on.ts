import 'server-only'
import { Decimal } from '../../calc/cost/decimal'
import type { Db, Tx } from '../../db/client'
import { pricePerKg } from './price-per-kg'

export type HeldPrice = {
  /** The entry that it is. */
  priceId: string
  ingredientId: string
  /** First day on which it held, YYYY-MM-DD. */
  holdsFrom: string
  /** The bakery's when it was entered, which may not be the one it has now: never add up two. */
  currency: string
  /** Major units of the currency. */
  perKg: Decimal
  packMassG: number
  packPrice: Decimal
  supplier: string
}

type Row = {
  id: string
  ingredient_id: string
  holds_from: string
  currency: string
  pack_mass_g: number
  pack_price: string
  supplier: string
}

/**
 * The price that holds on a day for each of the ingredients: the latest that begins on the day or before; of several
 * for one date, the one entered last (`priceThatHolds` in rules.ts is the same rule). An ingredient without one is
 * not in the answer: a missing price is not a price of nothing.
 * For costing. Whoever calls has made sure that the person sees costs.
 * @param day YYYY-MM-DD, in the bakery's zone
 */
export async function priceOn(
  from: Db | Tx,
  bakeryId: string,
  ingredientIds: readonly string[],
  day: string,
): Promise<Map<string, HeldPrice>> {
  if (ingredientIds.length === 0) return new Map()
  const rows = await from.$queryRaw<Row[]>`
    SELECT DISTINCT ON (ingredient_id)
      id, ingredient_id, to_char(holds_from, 'YYYY-MM-DD') AS holds_from, currency, pack_mass_g, pack_price::text AS pack_price, supplier
    FROM price
    WHERE bakery_id = ${bakeryId}::uuid AND ingredient_id = ANY(${[...ingredientIds]}::uuid[]) AND holds_from <= ${day}::date
    ORDER BY ingredient_id, holds_from DESC, entered_at DESC, id DESC`
  return new Map(rows.map((row) => [row.ingredient_id, heldPrice(row)]))
}

function heldPrice(row: Row): HeldPrice {
  return {
    priceId: row.id,
    ingredientId: row.ingredient_id,
    holdsFrom: row.holds_from,
    currency: row.currency,
    perKg: pricePerKg({ packPrice: row.pack_price, packMassG: row.pack_mass_g }),
    packMassG: row.pack_mass_g,
    packPrice: new Decimal(row.pack_price),
    supplier: row.supplier,
  }
}
