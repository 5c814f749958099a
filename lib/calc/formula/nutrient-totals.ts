import { compositionWarnings, type CompositionWarning } from './composition-warnings'
import { mustBeFormula } from './must-be-formula'
import { nutrientShare } from './nutrient-share'
import type { Formula, Nutrient } from './types'

const NUTRIENTS: readonly Nutrient[] = ['water', 'fat', 'protein', 'sugars', 'fibre', 'salt']

export type NutrientTotal = {
  nutrient: Nutrient
  massG: number
  pctFlour: number
  pctDough: number
  /** Lines that do not state it. When there are any, the total is a lower bound and says so here. */
  notStatedLineIds: string[]
}

export type NutrientTotals = {
  totals: NutrientTotal[]
  /** Salt lines as weighed; the label's salt figure (sodium x 2.5) is another number. */
  saltWeighedG: number
  warnings: CompositionWarning[]
}

/**
 * True water, fat, protein, sugars, fibre and salt of a formula from composition per 100 g.
 * A line without composition or without a value is listed, not counted as zero in silence.
 * @throws CalcError as mustBeFormula; 'out-of-range' for a stated value outside 0 to 100 %
 * Source: mass balance; salt is sodium x 2.5, Regulation (EU) 1169/2011, Annex I.
 */
export function nutrientTotals(formula: Formula): NutrientTotals {
  const flourMassG = mustBeFormula(formula)
  const doughMassG = formula.lines.reduce((sum, line) => sum + line.massG, 0)
  const warnings = formula.lines.flatMap((line, i) =>
    line.composition === null ? [] : compositionWarnings(`lines[${i}].composition`, line.composition),
  )
  const totals = NUTRIENTS.map((nutrient): NutrientTotal => {
    let massG = 0
    const notStatedLineIds: string[] = []
    for (const line of formula.lines) {
      const share = nutrientShare(line.composition, nutrient)
      if (share === null) notStatedLineIds.push(line.id)
      else massG += share * line.massG
    }
    return {
      nutrient,
      massG,
      pctFlour: (100 * massG) / flourMassG,
      pctDough: (100 * massG) / doughMassG,
      notStatedLineIds,
    }
  })
  const saltWeighedG = formula.lines.reduce((sum, line) => sum + (line.kind === 'salt' ? line.massG : 0), 0)
  return { totals, saltWeighedG, warnings }
}
