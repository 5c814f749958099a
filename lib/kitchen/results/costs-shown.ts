import 'server-only'
import { Decimal } from '../../calc/cost/decimal'
import { asMajor } from '../as-major'
import { costAndGain, type ArmCost, type CostedArm } from './cost-and-gain'

/** What costs were worked out from: the lines of each arm's dough with the price of each on the day. */
export type CostsRest = { piecesPlanned: number; arms: readonly CostedArm[] }

/** Costs as they are shown, worked out from what they rest on alone. */
export function costsShown(day: string, { piecesPlanned, arms }: CostsRest) {
  const { currency, arms: costs } = costAndGain({ day, piecesPlanned, arms, gainPerPiece: new Decimal(0) })
  return { currency, arms: costs.map((cost) => shown(cost, currency ?? '')) }
}

function shown(cost: ArmCost, currency: string) {
  const amount = (minor: Decimal | null) => (minor ? asMajor(minor, currency) : null)
  return {
    arm: cost.arm,
    unpriced: cost.unpriced,
    mixedCurrencies: cost.mixedCurrencies,
    good: cost.good,
    perBatch: amount(cost.perBatch),
    perPlannedPiece: amount(cost.perPlannedPiece),
    perGoodPiece: amount(cost.perGoodPiece),
    perKg: amount(cost.perKg),
    perLitre: amount(cost.perLitre),
    differencePerPlannedPiece: amount(cost.differencePerPlannedPiece),
    differencePerGoodPiece: amount(cost.differencePerGoodPiece),
    breakEven:
      cost.breakEven?.outcome === 'price'
        ? {
            ingredient: cost.breakEven.ingredient,
            outcome: 'price' as const,
            perKg: asMajor(cost.breakEven.perKg, currency),
          }
        : cost.breakEven,
  }
}
