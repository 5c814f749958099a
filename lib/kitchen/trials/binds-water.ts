import 'server-only'
import type { PlanIngredient } from './plan-types'

/** Above these a dry ingredient takes up much more water than flour does: vital gluten, bran, wholemeal. Common practice, no source. */
const muchProteinPct = 40
const muchFibrePct = 10
const dryPct = 20

/**
 * Whether equal water would not make an equal dough: what is marked so in the stores (flakes, pre-gelatinised starch:
 * no composition shows it), and what is dry with much protein or fibre.
 */
export function bindsWater({
  bindsWater: isMarked,
  composition,
}: Pick<PlanIngredient, 'bindsWater' | 'composition'>): boolean {
  if (isMarked) return true
  if (composition === null || composition.waterPct === null || composition.waterPct > dryPct) return false
  return (composition.proteinPct ?? 0) >= muchProteinPct || (composition.fibrePct ?? 0) >= muchFibrePct
}
