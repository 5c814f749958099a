import { mustBeWithin, mustHaveAtLeast, mustMatchLength } from '../checks'
import { type TailPair, chiMixture } from './chi-mixture'
import { normalUpper } from './normal-tail'

export type Sides = 'one' | 'two'

const ONE_BY_SQRT_2PI = 0.3989422804014327

/**
 * Multivariate t with product correlation ρᵢⱼ = lᵢ lⱼ, as several arms against one control have it:
 * `two` P(max |Tᵢ| ≤ c), `one` P(max Tᵢ ≤ c), and the complement, which is integrated as such.
 * The integral over the shared part z of the arms is summed by the trapezoidal rule, as is the one over the shared
 * standard deviation (chiMixture); both converge exponentially. No random numbers.
 * With noncentralities δᵢ it is the noncentral kind, Tᵢ = (Zᵢ + δᵢ) / s: the chance in truth, for a power.
 * @param c finite, ≥ 0 for `two`
 * @param df 0.5 ≤ df ≤ 1e6
 * @param loadings lᵢ of each arm, −1 < lᵢ < 1, |lᵢ| ≤ 0.9999; see dunnettLoadings
 * @param noncentralities δᵢ of each arm, −100 to 100; none means all 0
 * @returns upper about 1e-10 relative, lower 1e-13 absolute
 * @throws CalcError 'not-finite' | 'out-of-range' | 'empty' | 'wrong-shape' | 'no-convergence'
 * Source: Dunnett (1955), JASA 50; Hochberg & Tamhane (1987), Multiple Comparison Procedures.
 * @example dunnettTail({ c: 2.43919, df: 15, loadings: [Math.SQRT1_2, Math.SQRT1_2], sides: 'two' }).upper // about 0.05
 */
export function dunnettTail(q: {
  c: number
  df: number
  loadings: readonly number[]
  noncentralities?: readonly number[]
  sides: Sides
}): TailPair {
  const c = mustBeWithin('c', q.c, q.sides === 'two' ? { min: 0 } : {})
  const shifts = q.noncentralities ?? q.loadings.map(() => 0)
  mustMatchLength('noncentralities', shifts, q.loadings.length)
  shifts.forEach((shift, i) => mustBeWithin(`noncentralities[${i}]`, shift, { min: -100, max: 100 }))
  const atLimit = dunnettNormalTail({ loadings: q.loadings, shifts, sides: q.sides })
  return chiMixture({ atScale: (s) => atLimit(c * s), df: q.df, noncentrality: Math.max(...shifts.map(Math.abs)) })
}

/**
 * The same for a known standard deviation, as a function of the limit; for the inside of an integral.
 * Arms that are alike are taken together.
 * @throws CalcError 'not-finite' | 'out-of-range' | 'empty', for the loadings
 */
export function dunnettNormalTail(q: {
  loadings: readonly number[]
  shifts: readonly number[]
  sides: Sides
}): (limit: number) => TailPair {
  const two = q.sides === 'two'
  mustHaveAtLeast('loadings', q.loadings, 1)
  q.loadings.forEach((l, i) => mustBeWithin(`loadings[${i}]`, l, { min: -0.9999, max: 0.9999 }))
  const groups = new Map<string, { l: number; shift: number; count: number; rest: number }>()
  q.loadings.forEach((loading, i) => {
    // for two sides an arm may be turned round, so that only the sign of its shift against its loading matters
    const turn = two && loading < 0 ? -1 : 1
    const [l, shift] = [turn * loading, turn * q.shifts[i]!]
    const group = groups.get(`${l} ${shift}`) ?? { l, shift, count: 0, rest: Math.sqrt((1 - l) * (1 + l)) }
    groups.set(`${l} ${shift}`, { ...group, count: group.count + 1 })
  })
  const arms = [...groups.values()]
  const sharpness = q.loadings.reduce((sum, l) => sum + (l * l) / (1 - l * l), 1)
  const step = 0.6 / Math.sqrt(sharpness)
  const reach = Math.max(...q.loadings.map(Math.abs))
  const farthest = Math.max(...q.shifts.map(Math.abs))
  const mirrored = two && farthest === 0

  return (limit) => {
    const last = Math.ceil(Math.min(38, 9 + reach * (Math.abs(limit) + farthest)) / step)
    let [lower, upper] = [0, 0]
    for (let node = mirrored ? 0 : -last; node <= last; node++) {
      const z = node * step
      const weight = step * ONE_BY_SQRT_2PI * Math.exp(-0.5 * z * z) * (mirrored && node > 0 ? 2 : 1)
      let logInside = 0
      for (const { l, shift, count, rest } of arms) {
        const centre = l * z + shift
        let outside = normalUpper((limit - centre) / rest)
        if (two) outside += normalUpper((limit + centre) / rest)
        logInside += count * Math.log1p(-Math.min(1, outside))
      }
      lower += weight * Math.exp(logInside)
      upper -= weight * Math.expm1(logInside)
    }
    return { lower, upper }
  }
}
