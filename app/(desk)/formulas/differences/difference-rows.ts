import type { ContentDifferences } from '@/lib/kitchen/formulas/differences-of-content'
import type { FormulaFigures } from '@/lib/kitchen/formulas/rules'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import type { FormulaFormat } from '@/lib/words/format/formula-format'

export type DifferenceRow = { key: string; label: string; from: string; to: string; isSame: boolean }
type Figures = { from: FormulaFigures | null; to: FormulaFigures | null }
type Forms = { text: Words['formulas']; format: FormulaFormat; language: Language }

/** Totals of both sides, each under the name of its convention; alike when they read alike. */
export function totalsRows({ from, to }: Figures, { text, format, language }: Forms): DifferenceRow[] {
  const { sheet } = text
  const row = (label: string, of: (side: FormulaFigures) => string) =>
    rowOf(label, from && of(from), to && of(to), text)
  return [
    row(sheet.total, (side) => format.pct(side.totalPct)),
    row(sheet.hydration, (side) => format.pctShort(side.plainWaterPct)),
    row(sheet.trueWater, ({ waterBesideFlour: water }) =>
      atLeast(format.pctShort(water.pctFlour), water.unknownIngredientIds, { text, language }),
    ),
    row(sheet.preFermented, (side) => format.pctShort(side.preFermentedFlourPct)),
    row(sheet.yieldWater, (side) => format.parts(side.doughYield.flourAndWater)),
    row(sheet.yieldAll, (side) => format.parts(side.doughYield.everything)),
    row(sheet.dough, (side) => (side.batch ? format.mass(side.batch.doughMassG) : text.notThere)),
  ]
}

/** What the dough holds on either side, on flour. */
export function nutrientRows({ from, to }: Figures, { text, format, language }: Forms): DifferenceRow[] {
  const { nutrients } = text.sheet
  return (Object.keys(nutrients) as (keyof typeof nutrients)[]).map((nutrient) => {
    const of = (side: FormulaFigures | null) => {
      const found = side?.nutrients.find((each) => each.nutrient === nutrient)
      return found ? atLeast(format.pctShort(found.pctFlour), found.unknownIngredientIds, { text, language }) : null
    }
    return rowOf(nutrients[nutrient], of(from), of(to), text)
  })
}

/** Batch and process of both sides. */
export function processRows(
  measured: ContentDifferences['measured'],
  { text, format }: Omit<Forms, 'language'>,
): DifferenceRow[] {
  const { compare, sheet } = text
  const forms: Record<(typeof measured)[number]['name'], { label: string; of: (value: number) => string }> = {
    pieces: { label: compare.pieces, of: format.count },
    scalingMassG: { label: compare.scalingMassG, of: format.massShort },
    doughLossPct: { label: sheet.doughLoss, of: format.pct },
    doughTempC: { label: sheet.doughTemp, of: format.temp },
    mixTimeS: { label: sheet.mixTime, of: format.minutes },
    bulkTimeS: { label: sheet.bulkTime, of: format.minutes },
    proofTimeS: { label: sheet.proofTime, of: format.minutes },
    bakeTempC: { label: sheet.bakeTemp, of: format.temp },
    bakeTimeS: { label: sheet.bakeTime, of: format.minutes },
  }
  return measured.map(({ name, from, to, isSame }) => ({
    key: name,
    label: forms[name].label,
    from: forms[name].of(from),
    to: forms[name].of(to),
    isSame,
  }))
}

function rowOf(label: string, before: string | null, after: string | null, text: Words['formulas']): DifferenceRow {
  return { key: label, label, from: before ?? text.notThere, to: after ?? text.notThere, isSame: before === after }
}

/** An ingredient that does not say makes the figure a least one. */
function atLeast(
  quantity: string,
  unknownIngredientIds: readonly string[],
  { text, language }: Omit<Forms, 'format'>,
): string {
  return unknownIngredientIds.length > 0 ? say(text.sheet.atLeast, language, { quantity }) : quantity
}
