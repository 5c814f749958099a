import { mustBeWithin } from '../checks'
import { mustBeFormula } from './must-be-formula'
import type { Formula } from './types'

export type FinalDoughView = {
  finalFlourMassG: number
  lines: { lineId: string; massG: number; pctFinalFlour: number }[]
  /** Each other stage as one ingredient of the final dough. */
  stages: { stageId: string; massG: number; pctFinalFlour: number }[]
  totalPctFinalFlour: number
}

/**
 * The mixer's view: percentages on the flour of the final dough alone, each earlier stage taken whole.
 * These are not comparable between formulas with different pre-ferments; use formulaTotals for that.
 * @throws CalcError as mustBeFormula; 'out-of-range' when the final dough holds no flour of its own
 * Source: Wild Yeast weblog, Baker's percentage tutorial, part 4, 2008.
 */
export function finalDoughView(formula: Formula): FinalDoughView {
  mustBeFormula(formula)
  const kinds = new Map(formula.stages.map((stage) => [stage.id, stage.kind]))
  const final = formula.lines.filter((line) => kinds.get(line.stageId) === 'final-dough')
  const finalFlourMassG = mustBeWithin(
    'finalFlourMassG',
    final.reduce((sum, line) => sum + (line.isFlour ? line.massG : 0), 0),
    { over: 0 },
  )
  const pct = (massG: number) => (100 * massG) / finalFlourMassG
  const stages = formula.stages
    .filter((stage) => stage.kind !== 'final-dough')
    .map((stage) => {
      const massG = formula.lines.reduce((sum, line) => sum + (line.stageId === stage.id ? line.massG : 0), 0)
      return { stageId: stage.id, massG, pctFinalFlour: pct(massG) }
    })
  return {
    finalFlourMassG,
    lines: final.map((line) => ({ lineId: line.id, massG: line.massG, pctFinalFlour: pct(line.massG) })),
    stages,
    totalPctFinalFlour: pct(formula.lines.reduce((sum, line) => sum + line.massG, 0)),
  }
}
