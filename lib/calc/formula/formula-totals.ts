import { mustBeFormula } from './must-be-formula'
import type { Formula, StageKind } from './types'

export type StageTotals = {
  stageId: string
  kind: StageKind
  massG: number
  flourMassG: number
  /** Mass of the stage on all flour of the formula. */
  pctFlour: number
  /** Part of the formula's flour that is in this stage. */
  flourShare: number
  /** Percentages on the stage's own flour; null where the stage holds none. */
  lines: { lineId: string; massG: number; pctStageFlour: number | null }[]
}

export type FormulaTotals = {
  flourMassG: number
  doughMassG: number
  totalPctFlour: number
  lines: { lineId: string; massG: number; pctFlour: number }[]
  stages: StageTotals[]
  /** Flour in pre-ferments, of all flour; scalds and soakers do not ferment and are not counted. */
  preFermentedFlourShare: number
}

/**
 * Baker's percentages on total flour and the totals of each stage.
 * @param formula lines with masses in g, ≥ 0; flour of all stages together is 100 %
 * @throws CalcError as mustBeFormula
 * Source: definition of the trade; all flours together are 100 % (P. Healea, teaching page; Hamelman, Bread, 2004).
 * @example flour 100 g, water 65 g: lines 100 % and 65 %, totalPctFlour 165
 */
export function formulaTotals(formula: Formula): FormulaTotals {
  const flourMassG = mustBeFormula(formula)
  const doughMassG = formula.lines.reduce((sum, line) => sum + line.massG, 0)
  const stages = formula.stages.map((stage): StageTotals => {
    const lines = formula.lines.filter((line) => line.stageId === stage.id)
    const massG = lines.reduce((sum, line) => sum + line.massG, 0)
    const stageFlourG = lines.reduce((sum, line) => sum + (line.isFlour ? line.massG : 0), 0)
    return {
      stageId: stage.id,
      kind: stage.kind,
      massG,
      flourMassG: stageFlourG,
      pctFlour: (100 * massG) / flourMassG,
      flourShare: stageFlourG / flourMassG,
      lines: lines.map((line) => ({
        lineId: line.id,
        massG: line.massG,
        pctStageFlour: stageFlourG > 0 ? (100 * line.massG) / stageFlourG : null,
      })),
    }
  })
  return {
    flourMassG,
    doughMassG,
    totalPctFlour: (100 * doughMassG) / flourMassG,
    lines: formula.lines.map((line) => ({
      lineId: line.id,
      massG: line.massG,
      pctFlour: (100 * line.massG) / flourMassG,
    })),
    stages,
    preFermentedFlourShare: stages.reduce((sum, s) => sum + (s.kind === 'pre-ferment' ? s.flourShare : 0), 0),
  }
}
