import 'server-only'
import { Decimal } from '../../calc/cost/decimal'
import type { Db } from '../../db/client'
import { asMajor } from '../as-major'
import { costedLine, currenciesOf, loafMinorOf, totalMinorOf, unpricedOf } from '../stores/costed-lines'
import { priceOn } from '../stores/price-on'
import type { Plan, PlanArm } from './plan-types'
import { onlyOne } from '../only-one'

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
 * What a plan's doughs cost at the prices of a day: a loaf by the dough as it was worked out, the trial by what is
 * weighed for it. Plain water without a price counts as nothing; any other ingredient without one is named, and then there
 * is no sum.
 * @param day YYYY-MM-DD, in the bakery's zone
 */
export async function costsOfPlan(from: Db, bakeryId: string, plan: Plan, day: string): Promise<PlanCosts> {
  const ids = plan.arms.flatMap(({ lines }) => lines.map(({ ingredientId }) => ingredientId))
  const held = await priceOn(from, bakeryId, [...new Set(ids)], day)
  const linesOf = (arm: PlanArm, mass: 'exactG' | 'weighedG') =>
    arm.lines.map((line) =>
      costedLine(
        {
          ingredientId: line.ingredientId,
          name: line.ingredient,
          massG: line[mass],
          isWater: line.kind === 'water',
        },
        held,
      ),
    )
  const all = plan.arms.flatMap((arm) => linesOf(arm, 'exactG'))
  const unpriced = unpricedOf(all)
  const currencies = currenciesOf(all)
  if (unpriced.length > 0 || currencies.length === 0) return { day, unpriced }
  const currency = onlyOne(currencies)
  if (currency === null) return { day, mixedCurrencies: true }

  const { mixingDays, batchesPerArm } = plan.declared
  const costs = plan.arms.map((arm) => ({
    position: arm.position,
    loafMinor: loafMinorOf(linesOf(arm, 'exactG'), day, currency, plan.process) ?? new Decimal(0),
    ofTrialMinor: totalMinorOf(linesOf(arm, 'weighedG'), day, currency).times(mixingDays * batchesPerArm),
  }))
  const controlMinor = costs[0]?.loafMinor ?? new Decimal(0)
  const amount = (minor: Decimal) => asMajor(minor, currency)
  return {
    day,
    currency,
    arms: costs.map(({ position, loafMinor, ofTrialMinor }) => ({
      position,
      perPiece: amount(loafMinor),
      differencePerPiece: amount(loafMinor.minus(controlMinor)),
      ofTrial: amount(ofTrialMinor),
    })),
    trialTotal: amount(costs.reduce((sum, { ofTrialMinor }) => sum.plus(ofTrialMinor), new Decimal(0))),
  }
}
