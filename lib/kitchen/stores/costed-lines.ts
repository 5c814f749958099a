import 'server-only'
import { batchCost } from '../../calc/cost/batch-cost'
import type { Decimal } from '../../calc/cost/decimal'
import { loafCostMinor } from '../../calc/cost/loaf-cost'
import type { Price } from '../../calc/cost/price-on-day'
import { asCostPrice } from './as-cost-price'
import type { HeldPrice } from './price-on'

export type CostedLine = {
  ingredientId: string
  name: string
  /** As it goes into one batch, g, ≥ 0. */
  massG: number
  /** Plain water costs nothing unless it has a price. */
  isWater: boolean
  /** Minor units per kg on the day asked about; null when there is none. */
  price: Price | null
}

/** A line with the price that the stores hold for it. */
export function costedLine(line: Omit<CostedLine, 'price'>, held: ReadonlyMap<string, HeldPrice>): CostedLine {
  const price = held.get(line.ingredientId)
  return { ...line, price: price ? asCostPrice(price) : null }
}

/** Names of what has no price on the day; while there is one, there is no sum. */
export function unpricedOf(lines: readonly CostedLine[]): string[] {
  return [...new Set(lines.filter((line) => !line.price && !line.isWater).map(({ name }) => name))]
}

/** The currencies of the prices, each once. */
export function currenciesOf(lines: readonly CostedLine[]): string[] {
  return [...new Set(lines.flatMap(({ price }) => price?.currency ?? []))]
}

/** What the lines cost together, minor units. @throws CalcError as batchCost */
export function totalMinorOf(lines: readonly CostedLine[], day: string, currency: string): Decimal {
  const free = { validFrom: day, perKgMinor: '0', currency }
  return batchCost({
    day,
    lines: lines.map((line, i) => ({
      lineId: String(i),
      name: line.name,
      massG: line.massG,
      prices: [line.price ?? free],
    })),
  }).totalMinor
}

/** How a formula makes loaves of its dough. */
export type Scaling = { scalingMassG: number; doughLossPct: number }

/**
 * What a loaf of the lines' dough costs, minor units, the same on every page that shows it; null while a price is missing,
 * the prices are not of one currency, or nothing is weighed.
 * @param currency of all prices; null where there is not one
 * @throws CalcError as batchCost and loafCostMinor
 */
export function loafMinorOf(
  lines: readonly CostedLine[],
  day: string,
  currency: string | null,
  scaling: Scaling,
): Decimal | null {
  const doughMassG = lines.reduce((sum, { massG }) => sum + massG, 0)
  if (currency === null || doughMassG <= 0 || unpricedOf(lines).length > 0) return null
  return loafCostMinor({ totalMinor: totalMinorOf(lines, day, currency), doughMassG, ...scaling })
}
