import 'server-only'
import type { Composition } from '../../calc/formula/types'
import type { Figure } from '../../db/generated/enums'

/** Sodium in mg of one gram of label salt: the inverse of salt = sodium × 2.5, Regulation (EU) No 1169/2011, Annex I. */
const sodiumMgPerSaltG = 400

/** An ingredient's figures, g per 100 g, as a composition; null when there are none. What is missing stays unknown. */
export function compositionOf(figures: readonly { figure: Figure; gPer100G: number }[]): Composition | null {
  if (figures.length === 0) return null
  const of = (name: Figure) => figures.find((each) => each.figure === name)?.gPer100G ?? null
  const saltG = of('salt')
  return {
    waterPct: of('water'),
    proteinPct: of('protein'),
    fatPct: of('fat'),
    carbohydratePct: of('carbohydrate'),
    sugarsPct: of('sugars'),
    fibrePct: of('fibre'),
    ashPct: null,
    sodiumMgPer100g: saltG === null ? null : saltG * sodiumMgPerSaltG,
  }
}
