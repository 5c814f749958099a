import { mustBeWithin } from '../checks'

export type YeastKind = 'fresh' | 'active-dry' | 'instant'

/**
 * Mass of a yeast for one part of fresh yeast. Equal solids would give 0.327 for dry yeast; active dry takes more
 * because part of its cells are dead. Source: Hamelman, Bread, 2004, yeast conversions.
 */
const PER_FRESH: Record<YeastKind, number> = { fresh: 1, 'active-dry': 0.4, instant: 0.33 }

/**
 * Mass of one kind of yeast in place of another. A start, not a measured equality: brands and ages differ.
 * @param massG mass of `from`, g, ≥ 0
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: Hamelman, Bread, 2004, yeast conversions.
 * @example 30 g of fresh is 12 g of active dry, or 9.9 g of instant
 */
export function yeastEquivalentG(q: { massG: number; from: YeastKind; to: YeastKind }): number {
  mustBeWithin('massG', q.massG, { min: 0 })
  return (q.massG * PER_FRESH[q.to]) / PER_FRESH[q.from]
}
