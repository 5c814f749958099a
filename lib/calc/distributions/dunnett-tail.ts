import { mustBeWithin, mustHaveAtLeast } from '../checks'
import { type TailPair, chiMixture } from './chi-mixture'
import { normalUpper } from './normal-tail'

export type Sides = 'one' | 'two'

const ONE_BY_SQRT_2PI = 0.3989422804014327

/**
 * Multivariate t with product correlation ρᵢⱼ = lᵢ lⱼ, as several arms against one control have it:
 * `two` P(max |Tᵢ| ≤ c), `one` P(max Tᵢ ≤ c), and the complement, which is integrated as such.
 * The integral over the shared part z of the arms is summed by the trapezoidal rule, as is the one over the shared
 * standard deviation (chiMixture); both converge exponentially. No random numbers.
 * @param c finite, ≥ 0 for `two`
 * @param df 0.5 ≤ df ≤ 1e6
 * @param loadings lᵢ of each arm, −1 < lᵢ < 1, |lᵢ| ≤ 0.9999; see dunnettLoadings
 * @returns upper about 1e-10 relative, lower 1e-13 absolute
 * @throws CalcError 'not-finite' | 'out-of-range' | 'empty' | 'no-convergence'
 * Source: Dunnett (1955), JASA 50; Hochberg & Tamhane (1987), Multiple Comparison Procedures.
 * @example dunnettTail({ c: 2.43919, df: 15, loadings: [Math.SQRT1_2, Math.SQRT1_2], sides: 'two' }).upper // about 0.05
 */
export function dunnettTail(q: { c: number; df: number; loadings: readonly number[]; sides: Sides }): TailPair {
  const c = mustBeWithin('c', q.c, q.sides === 'two' ? { min: 0 } : {})
  mustHaveAtLeast('loadings', q.loadings, 1)
  q.loadings.forEach((l, i) => mustBeWithin(`loadings[${i}]`, l, { min: -0.9999, max: 0.9999 }))
  const atLimit = normalPart(q.loadings, q.sides)
  return chiMixture({ atScale: (s) => atLimit(c * s), df: q.df })
}

/** The same for a known standard deviation, as a function of the limit. Equal loadings are taken together. */
function normalPart(loadings: readonly number[], sides: Sides): (limit: number) => TailPair {
  // for two sides the sign of a loading does not matter, its arm may be turned round
  const counts = new Map<number, number>()
  for (const l of loadings) {
    const key = sides === 'two' ? Math.abs(l) : l
    counts.set(key, (counts.get(key) ?? 0) + 1)
  }
  const arms = [...counts].map(([l, count]) => ({ l, count, rest: Math.sqrt((1 - l) * (1 + l)) }))
  const sharpness = loadings.reduce((sum, l) => sum + (l * l) / (1 - l * l), 1)
  const step = 0.6 / Math.sqrt(sharpness)
  const reach = Math.max(...loadings.map(Math.abs))

  return (limit) => {
    const last = Math.ceil(Math.min(38, 9 + reach * Math.abs(limit)) / step)
    let [lower, upper] = [0, 0]
    for (let node = sides === 'two' ? 0 : -last; node <= last; node++) {
      const z = node * step
      const weight = step * ONE_BY_SQRT_2PI * Math.exp(-0.5 * z * z) * (sides === 'two' && node > 0 ? 2 : 1)
      let logInside = 0
      for (const { l, count, rest } of arms) {
        let outside = normalUpper((limit - l * z) / rest)
        if (sides === 'two') outside += normalUpper((limit + l * z) / rest)
        logInside += count * Math.log1p(-Math.min(1, outside))
      }
      lower += weight * Math.exp(logInside)
      upper -= weight * Math.expm1(logInside)
    }
    return { lower, upper }
  }
}
