import type { Formula, FormulaLine, StageKind } from './types'

/** A line as somebody types it in: what it is, or only whether it is flour; in which stage, or in the final dough. */
export type FlatLine = Pick<FormulaLine, 'id' | 'massG'> &
  Partial<Pick<FormulaLine, 'kind' | 'isFlour' | 'isPouredLiquid' | 'composition'>> & { stage?: StageKind }

/**
 * A formula from lines that know no ingredients and no stages of their own: there is one stage of each kind that a line
 * is in, named for it. A line is flour when it says so, or when its kind is.
 */
export function flatFormula(lines: readonly FlatLine[]): Formula {
  const whole = lines.map(
    ({ stage = 'final-dough', kind, isFlour = kind === 'flour', ...line }): FormulaLine => ({
      ingredientId: line.id,
      stageId: stage,
      kind: kind ?? (isFlour ? 'flour' : 'other'),
      isFlour,
      isPouredLiquid: false,
      composition: null,
      ...line,
    }),
  )
  const stages = [...new Set(whole.map(({ stageId }) => stageId))]
  return {
    stages: (['final-dough', 'pre-ferment', 'scald', 'soaker'] as const).flatMap((kind) =>
      stages.includes(kind) ? [{ id: kind, kind }] : [],
    ),
    lines: whole,
  }
}
