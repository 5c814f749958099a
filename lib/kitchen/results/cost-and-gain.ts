import 'server-only'
import { breakEvenPrice } from '../../calc/cost/break-even-price'
import type { Decimal } from '../../calc/cost/decimal'
import { currenciesOf, totalMinorOf, unpricedOf, type CostedLine } from '../stores/costed-lines'

export type CostedArm = {
  arm: number
  lines: readonly CostedLine[]
  /** The one ingredient that the control has none of; null when there is none or more than one. */
  addedIngredientId: string | null
  /** Of each batch that counts: pieces good enough to sell, null where nobody counted them. */
  goodPieces: readonly (number | null)[]
  /** Means of the loaves measured; null where none was. */
  loafMassG: number | null
  loafVolumeMl: number | null
}

/** Minor units of the currency as exact decimals, not rounded. Null where what it is divided by is missing. */
export type ArmCost = {
  arm: number
  /** Ingredients without a price on the day; while there is one, no sum is given. */
  unpriced: string[]
  mixedCurrencies: boolean
  perBatch: Decimal | null
  perPlannedPiece: Decimal | null
  perGoodPiece: Decimal | null
  perKg: Decimal | null
  perLitre: Decimal | null
  good: { pieces: number; batches: number } | null
  /** Arm less control, per planned and per good piece. */
  differencePerPlannedPiece: Decimal | null
  differencePerGoodPiece: Decimal | null
  breakEven: { ingredient: string; outcome: 'price'; perKg: Decimal } | { ingredient: string; outcome: 'never' } | null
}

/**
 * Ingredient cost of each arm at the prices of one day, per batch, per loaf (planned, and good ones), per kg and per
 * litre of bread, and what it costs more than the control. A missing price is named and never taken as nothing.
 * Break-even is the price per kg of the added ingredient at which a good piece costs what the control's costs plus
 * the gain; it needs every other price, not its own.
 * @param arms the control first
 * @param piecesPlanned of one batch, whole, ≥ 1
 * @param gainPerPiece what a good piece is worth more, minor units; 0 when nobody said
 * @throws CalcError as batchCost and breakEvenPrice
 * Source: as lib/calc/cost.
 */
export function costAndGain(q: {
  day: string
  piecesPlanned: number
  arms: readonly CostedArm[]
  gainPerPiece: Decimal
}): { currency: string | null; arms: ArmCost[] } {
  const currencies = currenciesOf(q.arms.flatMap(({ lines }) => lines))
  const mixed = currencies.length > 1
  const [currency = null] = mixed ? [] : currencies
  const costs = q.arms.map((arm) => ({ arm, cost: costOfArm(arm, q, currency) }))
  const control = costs[0]?.cost
  return {
    currency,
    arms: costs.map(({ arm, cost }) => ({
      ...cost,
      mixedCurrencies: mixed,
      differencePerPlannedPiece: lessControl(cost.perPlannedPiece, control?.perPlannedPiece),
      differencePerGoodPiece: lessControl(cost.perGoodPiece, control?.perGoodPiece),
      breakEven:
        arm.arm === 0 || !control?.perGoodPiece || currency === null
          ? null
          : breakEvenOf(arm, cost, control.perGoodPiece, currency, q),
    })),
  }
}

type OwnCost = Omit<ArmCost, 'mixedCurrencies' | 'differencePerPlannedPiece' | 'differencePerGoodPiece' | 'breakEven'>

function costOfArm(arm: CostedArm, q: { day: string; piecesPlanned: number }, currency: string | null): OwnCost {
  const unpriced = unpricedOf(arm.lines)
  const good = goodOf(arm)
  const whole = { arm: arm.arm, unpriced, good }
  const perBatch =
    unpriced.length > 0 || currency === null || arm.lines.length === 0 ? null : totalMinorOf(arm.lines, q.day, currency)
  if (!perBatch)
    return { ...whole, perBatch: null, perPlannedPiece: null, perGoodPiece: null, perKg: null, perLitre: null }
  const perGoodPiece = good && good.pieces > 0 ? perBatch.times(good.batches).dividedBy(good.pieces) : null
  const perThousand = (amount: number | null) =>
    perGoodPiece && amount !== null && amount > 0 ? perGoodPiece.times(1000).dividedBy(amount) : null
  return {
    ...whole,
    perBatch,
    perPlannedPiece: perBatch.dividedBy(q.piecesPlanned),
    perGoodPiece,
    perKg: perThousand(arm.loafMassG),
    perLitre: perThousand(arm.loafVolumeMl),
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

function lessControl(own: Decimal | null, control: Decimal | null | undefined): Decimal | null {
  return own && control ? own.minus(control) : null
}

function breakEvenOf(
  arm: CostedArm,
  cost: OwnCost,
  controlPerGoodPiece: Decimal,
  currency: string,
  q: { day: string; gainPerPiece: Decimal },
): ArmCost['breakEven'] {
  const added = arm.lines.filter(({ ingredientId }) => ingredientId === arm.addedIngredientId)
  const rest = arm.lines.filter(({ ingredientId }) => ingredientId !== arm.addedIngredientId)
  const [line] = added
  const addedMassG = added.reduce((sum, { massG }) => sum + massG, 0)
  if (!line || addedMassG <= 0 || rest.length === 0 || !cost.good || cost.good.pieces === 0) return null
  if (rest.some(({ price, isWater }) => !price && !isWater)) return null
  const even = breakEvenPrice({
    controlPerGoodPieceMinor: controlPerGoodPiece,
    gainPerGoodPieceMinor: q.gainPerPiece,
    armRestMinor: totalMinorOf(rest, q.day, currency).times(cost.good.batches),
    armGoodPieces: cost.good.pieces,
    addedMassG: addedMassG * cost.good.batches,
  })
  return even.outcome === 'never'
    ? { ingredient: line.name, outcome: 'never' }
    : { ingredient: line.name, outcome: 'price', perKg: even.perKgMinor }
}
