import { mustBeWithin } from '../checks'
import { CalcError } from '../error'

export type YeastKind = 'fresh' | 'active-dry' | 'instant'
export type YeastConvention = 'hamelman' | 'gisslen' | 'three-quarters'

/**
 * Mass of a yeast for one part of fresh yeast, by each textbook; they differ, so the convention is a field. Equal solids
 * would give 0.327 for dry yeast; active dry takes more because part of its cells are dead. The widespread rule of three
 * quarters speaks of active dry and instant only. Sources: J. Hamelman, Bread, 2004, yeast conversions; W. Gisslen,
 * Professional Cooking, as reproduced; three quarters: common practice, no source.
 */
const PER_FRESH: Record<YeastConvention, Record<YeastKind, number | null>> = {
  hamelman: { fresh: 1, 'active-dry': 0.4, instant: 0.33 },
  gisslen: { fresh: 1, 'active-dry': 0.5, instant: 0.35 },
  'three-quarters': { fresh: null, 'active-dry': 1, instant: 0.75 },
}

/**
 * Mass of one kind of yeast in place of another, by a stated convention. A start, not a measured equality: brands and ages
 * differ.
 * @param massG mass of `from`, g, ≥ 0
 * @throws CalcError 'not-finite' | 'out-of-range'; 'not-possible' with reason 'not-in-convention'
 * Source: by convention, see PER_FRESH.
 * @example 30 g of fresh is 12 g of active dry, or 9.9 g of instant, by Hamelman; 15 and 10.5 g by Gisslen
 */
export function yeastEquivalentG(q: {
  massG: number
  from: YeastKind
  to: YeastKind
  convention: YeastConvention
}): number {
  mustBeWithin('massG', q.massG, { min: 0 })
  const perFresh = PER_FRESH[q.convention]
  const of = (field: 'from' | 'to') => {
    const parts = perFresh[q[field]]
    if (parts === null) throw new CalcError('not-possible', { field, value: q[field], reason: 'not-in-convention' })
    return parts
  }
  return (q.massG * of('to')) / of('from')
}
