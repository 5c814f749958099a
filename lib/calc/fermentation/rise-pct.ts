import { mustBeWithin } from '../checks'

/**
 * Rise of a sample of dough in a straight-sided jar: (h − h₀)/h₀ · 100. The jar must be kept at the dough's temperature.
 * @param startHeightMm of the dough at the start, mm, > 0
 * @param heightMm now, mm, ≥ 0; negative rise says that it has fallen below the start
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: home sourdough teaching; common practice, no source.
 * @example from 60 to 105 mm: 75 %
 */
export function risePct(q: { startHeightMm: number; heightMm: number }): number {
  mustBeWithin('startHeightMm', q.startHeightMm, { over: 0 })
  mustBeWithin('heightMm', q.heightMm, { min: 0 })
  return mustBeWithin('heightMm', ((q.heightMm - q.startHeightMm) / q.startHeightMm) * 100)
}
