import { mustBeWhole, mustBeWithin } from '../checks'
import { CalcError } from '../error'

/**
 * How stated losses combine. `on`: a loss is a share of the dough it starts from, or of the baked mass it ends in
 * (10 % of dough is 11.1 % of bread). `combine`: shares are added up, or each is taken from what the one before left.
 */
export type LossConvention = { on: 'dough' | 'baked'; combine: 'added' | 'compounded' }

/**
 * Dough to mix for a number of pieces: pieces × mass × what the losses between dough and that mass take.
 * @param pieces whole pieces, ≥ 1
 * @param pieceMassG mass of a piece after the losses named (scaling mass, or baked mass), g, > 0
 * @param lossShares each 0 ≤ share < 1 (bake, scaling, fermentation …); empty for none
 * @returns dough mass, g, not rounded
 * @throws CalcError 'not-finite' | 'out-of-range'; 'not-possible' when the losses leave nothing
 * Source: both ways of combining are taught: German vocational bakery exercise, 2013 (added); compounded is the mass balance.
 * @example 18 × 1500 g, losses 0.125 and 0.02 on dough, added: 31 579 g
 */
export function doughMassForPiecesG(q: {
  pieces: number
  pieceMassG: number
  lossShares: readonly number[]
  losses: LossConvention
}): number {
  mustBeWhole('pieces', q.pieces, { min: 1 })
  mustBeWithin('pieceMassG', q.pieceMassG, { over: 0 })
  q.lossShares.forEach((share, i) => mustBeWithin(`lossShares[${i}]`, share, { min: 0, under: 1 }))
  const netG = q.pieces * q.pieceMassG
  const sum = q.lossShares.reduce((total, share) => total + share, 0)
  if (q.losses.on === 'baked') {
    return (
      netG * (q.losses.combine === 'added' ? 1 + sum : q.lossShares.reduce((factor, share) => factor * (1 + share), 1))
    )
  }
  if (q.losses.combine === 'compounded') return netG / q.lossShares.reduce((factor, share) => factor * (1 - share), 1)
  if (sum >= 1) throw new CalcError('not-possible', { field: 'lossShares', value: sum, reason: 'losses-leave-nothing' })
  return netG / (1 - sum)
}
