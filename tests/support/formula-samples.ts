import type { Composition, Formula, FormulaLine, IngredientKind } from '@/lib/calc/formula/types'

/** A line of the final dough; what is poured and what is flour follow from the kind unless said otherwise. */
export function line(
  id: string,
  kind: IngredientKind,
  massG: number,
  composition: Composition | null = null,
  more: Partial<FormulaLine> = {},
): FormulaLine {
  return {
    id,
    ingredientId: id,
    stageId: 'dough',
    massG,
    kind,
    isFlour: kind === 'flour',
    isPouredLiquid: kind === 'water',
    composition,
    ...more,
  }
}

export function straightDough(...lines: FormulaLine[]): Formula {
  return { stages: [{ id: 'dough', kind: 'final-dough' }], lines }
}
