import 'server-only'
import { batchCost } from '../../calc/cost/batch-cost'
import { costDifference } from '../../calc/cost/cost-difference'
import { Decimal } from '../../calc/cost/decimal'
import type { Db } from '../../db/client'
import { asMajor } from '../as-major'
import { asCostPrice } from '../stores/as-cost-price'
import { priceOn } from '../stores/price-on'
import type { Plan, PlanArm } from './plan-types'

/** Ingredient cost at one day's prices, in major units as decimal text, not rounded; for those who may see costs. */
export type PlanCosts =
  | {
      day: string
      currency: string
      arms: { position: number; perPiece: string; differencePerPiece: string; ofTrial: string }[]
      trialTotal: string
    }
  | { day: string; unpriced: string[] }
  | { day: string; mixedCurrencies: true }

/**
 * What a plan's doughs cost at the prices of a day. Plain water without a price counts as nothing; any other
 * ingredient without one is named, and then there is no sum.
 * @param day YYYY-MM-DD, in the bakery's zone
 */
export async function costsOfPlan(from: Db, bakeryId: string, plan: Plan, day: string): Promise<PlanCosts> {
  const lines = plan.arms.flatMap((arm) => arm.lines)
  const held = await priceOn(from, bakeryId, [...new Set(lines.map(({ ingredientId }) => ingredientId))], day)
  const unpriced = [
    ...new Set(
      lines.filter((line) => line.kind !== 'water' && !held.has(line.ingredientId)).map(({ ingredient }) => ingredient),
    ),
  ]
  if (unpriced.length > 0) return { day, unpriced }
  const currencies = [...new Set([...held.values()].map(({ currency }) => currency))]
  const [currency] = currencies
  if (currency === undefined) return { day, unpriced: [] }
  if (currencies.length > 1) return { day, mixedCurrencies: true }

  const free = { validFrom: day, perKgMinor: '0', currency }
  const totalOf = (arm: PlanArm) =>
    batchCost({
      day,
      lines: arm.lines.map((line, i) => {
        const price = held.get(line.ingredientId)
        return {
          lineId: String(i),
          name: line.ingredient,
          massG: line.weighedG,
          prices: [price ? asCostPrice(price) : free],
        }
      }),
    }).totalMinor
  const amount = (minor: Decimal) => asMajor(minor, currency)
  const { piecesPerBatch, mixingDays, batchesPerArm } = plan.declared
  const totals = plan.arms.map((arm) => ({ position: arm.position, totalMinor: totalOf(arm) }))
  const controlMinor = totals[0]?.totalMinor ?? new Decimal(0)
  return {
    day,
    currency,
    arms: totals.map(({ position, totalMinor }) => ({
      position,
      perPiece: amount(totalMinor.dividedBy(piecesPerBatch)),
      differencePerPiece: amount(
        costDifference({ controlMinor, armMinor: totalMinor }).differenceMinor.dividedBy(piecesPerBatch),
      ),
      ofTrial: amount(totalMinor.times(mixingDays * batchesPerArm)),
    })),
    trialTotal: amount(
      totals.reduce((sum, { totalMinor }) => sum.plus(totalMinor), new Decimal(0)).times(mixingDays * batchesPerArm),
    ),
  }
}
