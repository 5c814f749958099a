import { declaredAllergens } from './declared-allergens'
import type { AdditiveClass, Allergen, Naming } from './types'

/**
 * How the EU has an ingredient named: an additive by its class, then its specific name or its E number; modified starch
 * needs neither, but its grain where that holds gluten, or where nobody has judged it.
 * @param additiveClass of several the one of its principal function
 * @param present allergens said of it; null where nobody has judged it
 * Source: Regulation (EU) No 1169/2011, Annex VII, Parts B and C, as in a university's guide and on flour millers' and
 *   additive makers' pages.
 * @example ascorbic acid, flour treatment agent, E 300: 'class-then-name-or-number'
 */
export function namingOf(q: {
  additiveClass: AdditiveClass | null
  eNumber: string | null
  present: readonly Allergen[] | null
}): Naming {
  if (q.additiveClass === null) return 'name'
  if (q.additiveClass === 'modified-starch') {
    const isFreeOfGluten =
      q.present !== null &&
      !declaredAllergens({ present: q.present, region: 'eu' }).declared.some(({ group }) => group === 'gluten')
    return isFreeOfGluten ? 'class-alone' : 'class-then-grain'
  }
  return q.eNumber === null ? 'class-then-name' : 'class-then-name-or-number'
}
