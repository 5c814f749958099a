import { mustBeWithin } from '../checks'

/**
 * Loadings lᵢ = √(nᵢ / (nᵢ + n₀)) of arm means against a control mean with one common variance; ρᵢⱼ = lᵢ lⱼ.
 * Equal sizes give lᵢ = √½, all correlations ½.
 * @param controlCount n₀, > 0; @param armCounts nᵢ, > 0
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: Dunnett (1955), JASA 50.
 * @example dunnettLoadings({ controlCount: 4, armCounts: [4, 12] }) // [0.7071, 0.8660]
 */
export function dunnettLoadings(q: { controlCount: number; armCounts: readonly number[] }): number[] {
  const control = mustBeWithin('controlCount', q.controlCount, { over: 0 })
  return q.armCounts.map((count, i) => {
    mustBeWithin(`armCounts[${i}]`, count, { over: 0 })
    return Math.sqrt(count / (count + control))
  })
}
