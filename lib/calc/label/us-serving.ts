import { mustBeWithin } from '../checks'

/** Reference amount of bread, g. 21 CFR 101.12(b), row as quoted from a law school's copy. */
const REFERENCE_G = 50

/**
 * Serving of sliced bread or rolls for a US label, and servings in a package. One piece where it weighs from two thirds of
 * to twice the reference amount of 50 g; one or two where it weighs more than half of it; below that the number of pieces
 * that comes closest to it. Servings in a package: below two whole, two to five to the nearest half, above whole.
 * A draft: the guide is older than the rule of 2016, so check the rule in force.
 * @param pieceG over 0 to 100 g (twice the reference amount: beyond it other rules hold); @param packageG at least a piece
 * @returns pieces in a serving from and to, g of the smaller one, and servings of that in the package
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: 21 CFR 101.12(b), row as quoted from a law school's copy; FDA inspection guide, attachment 6; 'below two whole'
 *   and the bound between half and two thirds from memory.
 * @example slice of 43 g, 454 g: one slice, 11 servings
 */
export function usServing(q: { pieceG: number; packageG: number }): {
  isDraft: true
  leastPieces: number
  mostPieces: number
  servingG: number
  servings: number
  cautions: ('draft-for-competent-person' | 'local-rules-decide' | 'rule-of-2016')[]
} {
  const pieceG = mustBeWithin('pieceG', q.pieceG, { over: 0, max: 2 * REFERENCE_G })
  mustBeWithin('packageG', q.packageG, { min: pieceG, max: 1e6 })
  const ofReference = pieceG / REFERENCE_G
  const closest = Math.max(1, Math.round(REFERENCE_G / pieceG))
  const [leastPieces, mostPieces] = ofReference >= 0.67 ? [1, 1] : ofReference > 0.5 ? [1, 2] : [closest, closest]
  const servingG = leastPieces * pieceG
  const servings = q.packageG / servingG
  const step = servings >= 2 && servings <= 5 ? 0.5 : 1
  return {
    isDraft: true,
    leastPieces,
    mostPieces,
    servingG,
    servings: Math.max(1, step * Math.round(servings / step)),
    cautions: ['draft-for-competent-person', 'local-rules-decide', 'rule-of-2016'],
  }
}
