import type { FormulaFigures } from '@/lib/kitchen/formulas/rules'
import { Cell } from '@/lib/ui/cell'
import { SheetTable } from '@/lib/ui/sheet-table'
import { listOf } from '@/lib/words/list-of'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import type { FormulaFormat } from '@/lib/words/format/formula-format'

type NutrientTableProps = {
  figures: FormulaFigures
  ingredients: readonly { id: string; name: string }[]
  text: Words['formulas']
  format: FormulaFormat
  language: Language
}

/** Water, fat, protein, sugars, fibre and salt of the dough; where an ingredient does not say, the figure is at least that. */
export function NutrientTable({ figures, ingredients, text, format, language }: NutrientTableProps) {
  const { sheet } = text
  const names = new Map(ingredients.map(({ id, name }) => [id, name]))
  return (
    <SheetTable
      caption={sheet.holds}
      captionHidden
      columns={[
        { key: 'nutrient', label: sheet.nutrient },
        { key: 'flour', label: sheet.onFlour, numeric: true },
        { key: 'dough', label: sheet.onDough, numeric: true },
        { key: 'unknown', label: sheet.notStated },
      ]}
    >
      {figures.nutrients.map(({ nutrient, pctFlour, pctDough, unknownIngredientIds }) => {
        const isWhole = unknownIngredientIds.length === 0
        const shown = (pct: number) =>
          isWhole ? format.pctShort(pct) : say(sheet.atLeast, language, { quantity: format.pctShort(pct) })
        return (
          <tr key={nutrient}>
            <Cell head>{sheet.nutrients[nutrient]}</Cell>
            <Cell numeric>{shown(pctFlour)}</Cell>
            <Cell numeric>{shown(pctDough)}</Cell>
            <Cell>
              {isWhole
                ? text.notThere
                : listOf(
                    unknownIngredientIds.map((id) => names.get(id) ?? id),
                    language,
                  )}
            </Cell>
          </tr>
        )
      })}
    </SheetTable>
  )
}
