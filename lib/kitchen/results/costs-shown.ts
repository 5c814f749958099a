import 'server-only'
import type { Decimal } from '../../calc/cost/decimal'
import { asMajor } from '../as-major'
import type { Scaling } from '../stores/costed-lines'
import { costAndGain, type CostedArm } from './cost-and-gain'

/** What costs were worked out from: scaling, and the lines of each arm's dough with the price of each on the day. */
export type CostsRest = { scaling: Scaling; arms: readonly CostedArm[] }

/** Costs as they are shown, worked out from what they rest on alone: decimal text in major units. */
export function costsShown(day: string, { scaling, arms }: CostsRest) {
  const { currency, arms: costs } = costAndGain({ day, scaling, arms })
  const amount = (minor: Decimal | null) => (minor ? asMajor(minor, currency ?? '') : null)
  return {
    currency,
    arms: costs.map(({ perBatch, perLoaf, perKg, perLitre, differencePerLoaf, ...cost }) => ({
      ...cost,
      perBatch: amount(perBatch),
      perLoaf: amount(perLoaf),
      perKg: amount(perKg),
      perLitre: amount(perLitre),
      differencePerLoaf: amount(differencePerLoaf),
    })),
  }
}
