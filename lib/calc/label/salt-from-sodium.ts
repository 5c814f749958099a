import { mustBeWithin } from '../checks'
import { SALT_PER_SODIUM } from '../formula/nutrient-share'

/**
 * The salt figure of an EU label: all sodium × 2.5, whatever it came from. It is not the grams of salt weighed in.
 * @param sodiumMg per any amount of food, mg, ≥ 0
 * @returns g of salt equivalent in the same amount
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: Regulation (EU) No 1169/2011, Annex I, 11.
 * @example 400 mg: 1 g
 */
export function saltFromSodiumG(q: { sodiumMg: number }): number {
  return mustBeWithin('sodiumMg', (mustBeWithin('sodiumMg', q.sodiumMg, { min: 0 }) * SALT_PER_SODIUM) / 1000)
}
