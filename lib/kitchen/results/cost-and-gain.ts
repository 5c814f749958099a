import 'server-only'
import type { Decimal } from '../../calc/cost/decimal'
import {
  currenciesOf,
  loafMinorOf,
  totalMinorOf,
  unpricedOf,
  type CostedLine,
  type Scaling,
} from '../stores/costed-lines'
import { sameVolumeOfArm, type SameVolume } from './same-volume-of-arm'
import type { VolumeRatio } from './volume-ratios'

export type CostedArm = {
  arm: number
  /** The dough as it was worked out, and as it was weighed and mixed. */
  lines: readonly CostedLine[]
  mixedLines: readonly CostedLine[]
  /** Of each batch that counts: pieces good enough to sell, null where nobody counted them. */
  goodPieces: readonly (number | null)[]
  /** Means of the loaves measured; null where none was. */
  loafMassG: number | null
  loafVolumeMl: number | null
  /** Ingredients that it doses, each once. */
  dosed: readonly string[]
  /** Volume of its loaves over the control's; null where that is not known, and for the control. */
  volume: VolumeRatio | null
}

/** Minor units of the currency as exact decimals, not rounded. Null where what it is divided by is missing. */
export type ArmCost = {
  arm: number
  /** Ingredients without a price on the day; while there is one, no sum is given. */
  unpriced: string[]
  mixedCurrencies: boolean
  /** Of one batch as it was mixed. */
  perBatch: Decimal | null
  /** Of the formula's scaling mass: the same on every page. What was spoilt is counted beside it, and is in no cost. */
  perLoaf: Decimal | null
  perKg: Decimal | null
  perLitre: Decimal | null
  good: { pieces: number; batches: number } | null
  /** Arm less control. */
  differencePerLoaf: Decimal | null
  sameVolume: SameVolume | null
}

/**
 * Ingredient cost of each arm at the prices of one day, per batch, per loaf, per kg and per litre of bread, what a
 * loaf costs more than the control's, and at which price of its ingredient a litre costs the same. A missing price is named and never taken as nothing.
 * @param arms the control first
 * @throws CalcError as batchCost and loafCostMinor
 * Source: as lib/calc/cost.
 */
export function costAndGain(q: { day: string; scaling: Scaling; arms: readonly CostedArm[] }): {
  currency: string | null
  arms: ArmCost[]
} {
  const currencies = currenciesOf(q.arms.flatMap(({ lines }) => lines))
  const mixed = currencies.length > 1
  const [currency = null] = mixed ? [] : currencies
  const costs = q.arms.map((arm) => costOfArm(arm, q, currency))
  const [controlArm] = q.arms
  const control = costs[0]?.perLoaf ?? null
  return {
    currency,
    arms: costs.map((cost, i) => ({
      ...cost,
      mixedCurrencies: mixed,
      differencePerLoaf: cost.perLoaf && control ? cost.perLoaf.minus(control) : null,
      sameVolume: controlArm ? sameVolumeOfArm(q.arms[i] ?? controlArm, controlArm, { ...q, currency }) : null,
    })),
  }
}

type OwnCost = Omit<ArmCost, 'mixedCurrencies' | 'differencePerLoaf' | 'sameVolume'>

function costOfArm(arm: CostedArm, q: { day: string; scaling: Scaling }, currency: string | null): OwnCost {
  const perLoaf = loafMinorOf(arm.lines, q.day, currency, q.scaling)
  const perThousand = (amount: number | null) =>
    perLoaf && amount !== null && amount > 0 ? perLoaf.times(1000).dividedBy(amount) : null
  return {
    arm: arm.arm,
    unpriced: unpricedOf(arm.lines),
    perBatch: perLoaf && currency !== null ? totalMinorOf(arm.mixedLines, q.day, currency) : null,
    perLoaf,
    perKg: perThousand(arm.loafMassG),
    perLitre: perThousand(arm.loafVolumeMl),
    good: goodOf(arm),
  }
}

/** Only when every batch was counted: a part of them would flatter or blame the arm. */
function goodOf(arm: CostedArm): { pieces: number; batches: number } | null {
  if (arm.goodPieces.length === 0) return null
  let pieces = 0
  for (const count of arm.goodPieces) {
    if (count === null) return null
    pieces += count
  }
  return { pieces, batches: arm.goodPieces.length }
}
