import { mustBeWithin } from '../checks'
import { type TailPair, chiMixture } from './chi-mixture'
import { normalUpper } from './normal-tail'

const ONE_BY_SQRT_2PI = 0.3989422804014327

/**
 * Studentized range of k independent means: P(Q ≤ q) and its complement, which is integrated as such.
 * @param range q ≥ 0; @param groups k, 2 to 100; @param df 0.5 ≤ df ≤ 1e6
 * @returns upper about 1e-10 relative, lower 1e-13 absolute
 * @throws CalcError 'not-finite' | 'out-of-range' | 'no-convergence'
 * Source: Hochberg & Tamhane (1987), Multiple Comparison Procedures; summed as in chiMixture.
 * @example studentizedRangeTail({ range: 3.8768, groups: 3, df: 10 }).upper // about 0.05
 */
export function studentizedRangeTail(q: { range: number; groups: number; df: number }): TailPair {
  const range = mustBeWithin('range', q.range, { min: 0 })
  const groups = mustBeWithin('groups', q.groups, { min: 2, max: 100 })
  const step = 0.5 / Math.sqrt(groups)
  const atScale = (s: number): TailPair => {
    const width = range * s
    const last = Math.ceil(Math.min(38, 9 + width) / step)
    let [lower, upper] = [0, 0]
    for (let node = -last; node <= last; node++) {
      // z is the largest of the means; the others lie between z − width and z
      const z = node * step
      const below = normalUpper(-z)
      if (below === 0) continue
      const weight = step * groups * ONE_BY_SQRT_2PI * Math.exp(-0.5 * z * z) * below ** (groups - 1)
      const logInside = (groups - 1) * Math.log1p(-Math.min(1, normalUpper(width - z) / below))
      lower += weight * Math.exp(logInside)
      upper -= weight * Math.expm1(logInside)
    }
    return { lower, upper }
  }
  return chiMixture({ atScale, df: q.df })
}
