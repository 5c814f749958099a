import type { Composition } from './types'

/** A composition of which only some parts are given: the others are 'not stated', never zero. */
export function statedComposition(
  parts: { readonly [Part in keyof Composition]?: number | null | undefined },
): Composition {
  return {
    waterPct: parts.waterPct ?? null,
    proteinPct: parts.proteinPct ?? null,
    fatPct: parts.fatPct ?? null,
    carbohydratePct: parts.carbohydratePct ?? null,
    sugarsPct: parts.sugarsPct ?? null,
    fibrePct: parts.fibrePct ?? null,
    ashPct: parts.ashPct ?? null,
    sodiumMgPer100g: parts.sodiumMgPer100g ?? null,
  }
}
