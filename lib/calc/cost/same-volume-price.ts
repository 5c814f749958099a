import { mustBeWithin } from '../checks'
import { Decimal } from './decimal'
import { mustBeAmount } from './must-be-amount'

export type SameVolumePrice =
  /** A litre costs as much as the control's at this price: up to it no more, or no more from it on. */
  | { outcome: 'up-to' | 'from'; perKgMinor: Decimal }
  /** A litre costs more at every price, even at none. */
  | { outcome: 'never' }
  /** A litre costs no more at any price. */
  | { outcome: 'always' }
  /** A litre of both holds as much of it, so its price does not tell them apart. */
  | { outcome: 'no-bearing' }

/** No loaf is so much larger; what an interval says beyond it is that nothing is known. */
export const MOST_VOLUME_RATIO = 1e6

/** Of the ingredient in both pieces: less than this part apart is alike, because masses are no exact decimals. */
const ALIKE = 1e-9

/**
 * The price of an ingredient at which a litre of bread of a test dough costs as much as one of the control. What a piece
 * costs is linear in that price, r + p · m, and a piece of the test dough counts for ρ pieces of the control:
 * r_t + p · m_t = ρ · (r_c + p · m_c), so p = (ρ · r_c − r_t) / (m_t − ρ · m_c).
 * @param volumeRatio ρ, volume of a piece of the test dough over the control's, 0 to 1,000,000
 * @param controlRestMinor, armRestMinor r, cost of a piece of each without that ingredient, minor units, ≥ 0
 * @param controlMassG, armMassG m, of that ingredient in a piece of each, g, ≥ 0
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: definition; common practice, no source.
 * @example rest 22 and 22.3 cents a piece, 2 g in the test dough alone, 5 % more volume: up to 400 cents a kg
 */
export function sameVolumePrice(q: {
  volumeRatio: number
  controlRestMinor: Decimal
  armRestMinor: Decimal
  controlMassG: Decimal
  armMassG: Decimal
}): SameVolumePrice {
  const ratio = new Decimal(mustBeWithin('volumeRatio', q.volumeRatio, { min: 0, max: MOST_VOLUME_RATIO }))
  const left = ratio
    .times(mustBeAmount('controlRestMinor', q.controlRestMinor))
    .minus(mustBeAmount('armRestMinor', q.armRestMinor))
  const inControl = ratio.times(mustBeAmount('controlMassG', q.controlMassG))
  const more = mustBeAmount('armMassG', q.armMassG).minus(inControl)
  if (more.abs().lessThanOrEqualTo(q.armMassG.plus(inControl).times(ALIKE))) return { outcome: 'no-bearing' }
  if (more.isPositive() && left.isNegative()) return { outcome: 'never' }
  if (more.isNegative() && !left.isNegative()) return { outcome: 'always' }
  return { outcome: more.isPositive() ? 'up-to' : 'from', perKgMinor: left.times(1000).dividedBy(more) }
}
