import { mustBeWithin, mustHaveAtLeast } from '../checks'

/**
 * Mean and standard deviation (divisor n − 1) of what packages hold; null for the deviation of one.
 * @param contentsG at least `least` and at most 10,000, each ≥ 0
 * @throws CalcError 'empty' | 'not-finite' | 'out-of-range'
 * Source: definition.
 */
export function contentsSummary(q: { contentsG: readonly number[]; least: number }): {
  meanG: number
  sdG: number | null
} {
  mustHaveAtLeast('contentsG', q.contentsG, q.least)
  const n = mustBeWithin('contentsG.length', q.contentsG.length, { max: 10_000 })
  let sumG = 0
  q.contentsG.forEach((contentG, i) => (sumG += mustBeWithin(`contentsG[${i}]`, contentG, { min: 0 })))
  const meanG = mustBeWithin('contentsG', sumG / n)
  if (n === 1) return { meanG, sdG: null }
  const squares = q.contentsG.reduce((sum, contentG) => sum + (contentG - meanG) ** 2, 0)
  return { meanG, sdG: mustBeWithin('contentsG', Math.sqrt(squares / (n - 1))) }
}
