import type { FormulaFigures } from '@/lib/kitchen/formulas/rules'
import type { Entry } from '@/lib/ui/definition-list'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import type { FormulaFormat } from '@/lib/words/format/formula-format'

/** The totals of a version for the margin, each under the name of its convention. */
export function totalsOf(
  figures: FormulaFigures,
  doughLossPct: number,
  text: Words['formulas'],
  format: FormulaFormat,
  language: Language,
): Entry[] {
  const { sheet } = text
  const { batch, waterBesideFlour: water } = figures
  const waterText = format.pctShort(water.pctFlour)
  return [
    ...(batch
      ? [
          { term: sheet.dough, detail: format.mass(batch.doughMassG), strong: true },
          { term: sheet.flour, detail: format.mass(batch.flourMassG) },
        ]
      : []),
    { term: sheet.doughLoss, detail: format.pct(doughLossPct) },
    { term: sheet.total, detail: format.pct(figures.totalPct) },
    { term: sheet.hydration, detail: format.pctShort(figures.plainWaterPct) },
    {
      term: sheet.trueWater,
      detail: water.unknownIngredientIds.length > 0 ? say(sheet.atLeast, language, { quantity: waterText }) : waterText,
    },
    ...(figures.preFermentedFlourPct > 0
      ? [{ term: sheet.preFermented, detail: format.pctShort(figures.preFermentedFlourPct) }]
      : []),
    { term: sheet.yieldWater, detail: format.parts(figures.doughYield.flourAndWater) },
    { term: sheet.yieldAll, detail: format.parts(figures.doughYield.everything) },
  ]
}
