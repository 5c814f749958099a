import { mustBeWithin, mustHaveAtLeast } from '../checks'
import { CalcError } from '../error'
import { normalUpper } from './normal-tail'
import { stirlingError } from './stirling-error'

export type Sides = 'one' | 'two'

const ONE_BY_SQRT_2PI = 0.3989422804014327
const MOST_NODES = 20_000

/**
 * Multivariate t with product correlation ρᵢⱼ = lᵢ lⱼ, as several arms against one control have it:
 * `two` P(max |Tᵢ| ≤ c), `one` P(max Tᵢ ≤ c), and the complement, which is integrated as such.
 * The double integral over the shared part z of the arms and the shared standard deviation s = eʷ is summed by the
 * trapezoidal rule in z and w, which converges exponentially for these integrands. No random numbers.
 * @param c finite, ≥ 0 for `two`
 * @param df 0.5 ≤ df ≤ 1e6
 * @param loadings lᵢ of each arm, −1 < lᵢ < 1, |lᵢ| ≤ 0.9999; see dunnettLoadings
 * @returns upper about 1e-10 relative, lower 1e-13 absolute
 * @throws CalcError 'not-finite' | 'out-of-range' | 'empty' | 'no-convergence'
 * Source: Dunnett (1955), JASA 50; Hochberg & Tamhane (1987), Multiple Comparison Procedures; Trefethen & Weideman (2014), SIAM Review 56.
 * @example dunnettTail({ c: 2.4668, df: 16, loadings: [Math.SQRT1_2, Math.SQRT1_2], sides: 'two' }).upper // about 0.05
 */
export function dunnettTail(q: { c: number; df: number; loadings: readonly number[]; sides: Sides }): { lower: number; upper: number } {
  const c = mustBeWithin('c', q.c, q.sides === 'two' ? { min: 0 } : {})
  const df = mustBeWithin('df', q.df, { min: 0.5, max: 1e6 })
  mustHaveAtLeast('loadings', q.loadings, 1)
  q.loadings.forEach((l, i) => mustBeWithin(`loadings[${i}]`, l, { min: -0.9999, max: 0.9999 }))
  const atScale = normalPart(q.loadings, q.sides)

  const half = df / 2
  const logFront = Math.LN2 + 0.5 * Math.log(half / (2 * Math.PI)) - stirlingError(half)
  const step = Math.min(0.12, 0.5 / Math.sqrt(2 * df))
  let [lower, upper] = [0, 0]
  const add = (node: number): boolean => {
    const w = node * step
    const weight = step * Math.exp(logFront + df * (w - 0.5 * Math.expm1(2 * w)))
    if (weight === 0) return false
    const part = atScale(c * Math.exp(w))
    lower += weight * part.lower
    upper += weight * part.upper
    // what is left beyond w is at most a few weights divided by the fall per node
    return weight > 1e-14 * Math.min(lower, upper) * step * Math.min(1, df)
  }
  let node = 0
  while (add(node) && node < MOST_NODES) node++
  node = -1
  while (add(node) && node > -MOST_NODES) node--
  if (node <= -MOST_NODES) throw new CalcError('no-convergence', { field: 'df', value: df })
  return { lower: Math.min(1, lower), upper: Math.min(1, upper) }
}

/** The same for a known standard deviation, as a function of the limit. Equal loadings are taken together. */
function normalPart(loadings: readonly number[], sides: Sides): (limit: number) => { lower: number; upper: number } {
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
