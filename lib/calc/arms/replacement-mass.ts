import { mustBeWithin } from '../checks'

/**
 * Mass of an ingredient that takes the place of another so that what matters of it stays: m = removed · share / share
 * of the new one. Fat for fat, water for water, active for active; two shares of 100 % are gram for gram.
 * @param removedG what is taken out, g, ≥ 0
 * @param ofPct of the constituent in what goes out, % by mass, > 0 to 100
 * @param byPct of it in what comes in, % by mass, > 0 to 100
 * @returns g, not rounded
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: mass balance.
 * @example 100 g of butter with 82 % fat, by oil with 100 %: 82 g
 */
export function replacementMassG(q: { removedG: number; ofPct: number; byPct: number }): number {
  const removedG = mustBeWithin('removedG', q.removedG, { min: 0 })
  const ofPct = mustBeWithin('ofPct', q.ofPct, { over: 0, max: 100 })
  const byPct = mustBeWithin('byPct', q.byPct, { over: 0, max: 100 })
  return (removedG * ofPct) / byPct
}
