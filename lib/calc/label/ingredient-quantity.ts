import { mustBeWithin } from '../checks'

/**
 * Quantity of an ingredient that a label names or shows: its mass as it goes in, on the mass of the finished product. Baking
 * loss makes it more; above 100 % it is said as grams for 100 g of product.
 * @param ingoingMassG of the ingredient in the batch, g, ≥ 0
 * @param finishedMassG of all bread of the batch, cooled, g, > 0
 * @returns %, and whether it is said as a percentage or as g for 100 g
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: Regulation (EU) No 1169/2011, Article 22 and Annex VIII; Commission Notice 2017/C 393/05.
 * @example butter 50 g in 170 g of biscuits: 29.4 %
 */
export function ingredientQuantity(q: { ingoingMassG: number; finishedMassG: number }): {
  quantityPct: number
  sayAs: 'percent' | 'g-per-100-g'
} {
  mustBeWithin('ingoingMassG', q.ingoingMassG, { min: 0 })
  mustBeWithin('finishedMassG', q.finishedMassG, { over: 0 })
  const quantityPct = mustBeWithin('ingoingMassG', (100 * q.ingoingMassG) / q.finishedMassG)
  return { quantityPct, sayAs: quantityPct > 100 ? 'g-per-100-g' : 'percent' }
}
