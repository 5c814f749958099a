import { mustBeWhole } from '../checks'
import { normalDeviate } from './normal-deviate'
import type { Random } from './seeded-random'

/** So few that their product, each at least 2⁻⁵³, stays a normal number. */
const FACTORS = 19

/**
 * A chi-squared deviate: a sum of exponential ones, two degrees of freedom each, −2 ln of a product of uniform
 * numbers; for an odd number one squared normal deviate more.
 * @param df whole, 1 to 1e6
 * @returns mean df, variance 2 df
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: Devroye (1986), Non-Uniform Random Variate Generation, chapter IX.3.
 */
export function chiSquaredDeviate(random: Random, df: number): number {
  mustBeWhole('df', df, { min: 1, max: 1e6 })
  let sum = df % 2 === 1 ? normalDeviate(random) ** 2 : 0
  for (let left = Math.floor(df / 2); left > 0; left -= FACTORS) {
    let product = 1
    for (let i = Math.min(left, FACTORS); i > 0; i--) product *= 1 - random()
    sum -= 2 * Math.log(product)
  }
  return sum
}
