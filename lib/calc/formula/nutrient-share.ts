import type { Composition, Nutrient } from './types'

/** Salt equivalent of sodium on labels: Regulation (EU) 1169/2011, Annex I no. 11 ('salt equivalent content = sodium x 2.5'). */
export const SALT_PER_SODIUM = 2.5

/**
 * Mass share of a nutrient in an ingredient as weighed, 0 to 1; null when the composition does not state it.
 * Salt is the label's salt equivalent: table salt comes to 0.969, because its sodium does.
 */
export function nutrientShare(composition: Composition | null, nutrient: Nutrient): number | null {
  if (composition === null) return null
  const share = (pct: number | null) => (pct === null ? null : pct / 100)
  switch (nutrient) {
    case 'water':
      return share(composition.waterPct)
    case 'fat':
      return share(composition.fatPct)
    case 'protein':
      return share(composition.proteinPct)
    case 'sugars':
      return share(composition.sugarsPct)
    case 'fibre':
      return share(composition.fibrePct)
    case 'salt':
      return composition.sodiumMgPer100g === null ? null : (composition.sodiumMgPer100g * SALT_PER_SODIUM) / 100_000
    default: {
      const never: never = nutrient
      return never
    }
  }
}
