import { mustBeWithin } from '../checks'

/**
 * Bread yield (Gebäckausbeute), parts of bread from 100 parts of flour: gross dough yield × (1 − loss).
 * @param grossDoughYieldPct all dough on flour, %, > 100 (see doughYield: the gross one, with salt and yeast)
 * @param lossShare all losses from dough to bread, on dough, 0 ≤ loss < 1
 * @returns %
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: definition of the German trade; vocational bakery exercise, 2013.
 * @example 188.7 and 14.5 %: 161.34
 */
export function breadYieldPct(q: { grossDoughYieldPct: number; lossShare: number }): number {
  mustBeWithin('grossDoughYieldPct', q.grossDoughYieldPct, { over: 100 })
  mustBeWithin('lossShare', q.lossShare, { min: 0, under: 1 })
  return q.grossDoughYieldPct * (1 - q.lossShare)
}
