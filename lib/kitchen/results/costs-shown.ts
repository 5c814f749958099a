import 'server-only'
import type { Decimal } from '../../calc/cost/decimal'
import type { SameVolumePrice } from '../../calc/cost/same-volume-price'
import { asMajor } from '../as-major'
import type { Scaling } from '../stores/costed-lines'
import { costAndGain, type CostedArm } from './cost-and-gain'
import type { SameVolume } from './same-volume-of-arm'

/** What costs were worked out from: scaling, and the lines of each arm's dough with the price of each on the day. */
export type CostsRest = { scaling: Scaling; arms: readonly CostedArm[] }

/** Costs as they are shown, worked out from what they rest on alone: decimal text in major units. */
export function costsShown(day: string, { scaling, arms }: CostsRest) {
  const { currency, arms: costs } = costAndGain({ day, scaling, arms })
  const amount = (minor: Decimal | null) => (minor ? asMajor(minor, currency ?? '') : null)
  return {
    currency,
    arms: costs.map(({ perBatch, perLoaf, perKg, perLitre, differencePerLoaf, sameVolume, ...cost }) => ({
      ...cost,
      perBatch: amount(perBatch),
      perLoaf: amount(perLoaf),
      perKg: amount(perKg),
      perLitre: amount(perLitre),
      differencePerLoaf: amount(differencePerLoaf),
      sameVolume: sameVolume && sameVolumeShown(sameVolume, amount),
    })),
  }
}

function sameVolumeShown(found: SameVolume, amount: (minor: Decimal | null) => string | null) {
  if (found.outcome !== 'worked-out') return found
  const priced = (price: SameVolumePrice) => ({
    outcome: price.outcome,
    perKg: amount('perKgMinor' in price ? price.perKgMinor : null),
  })
  const { outcome, ingredient, volume, at, low, high } = found
  return { outcome, ingredient, volume, at: priced(at), low: low && priced(low), high: high && priced(high) }
}
