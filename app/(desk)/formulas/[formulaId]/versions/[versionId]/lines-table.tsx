import { Fragment } from 'react'
import type { getVersion } from '@/lib/kitchen/formulas/get-version'
import type { FormulaFigures } from '@/lib/kitchen/formulas/rules'
import type { AnswerOf } from '@/lib/kitchen/query'
import { Cell } from '@/lib/ui/cell'
import { GroupRow } from '@/lib/ui/group-row'
import { SheetTable } from '@/lib/ui/sheet-table'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import type { FormulaFormat } from '@/lib/words/format/formula-format'
import { stageNames } from '@/lib/words/stage-names'

type LinesTableProps = {
  content: AnswerOf<typeof getVersion>['content']
  figures: FormulaFigures | null
  text: Words['formulas']
  format: FormulaFormat
  language: Language
}

/** What goes in, stage by stage, in % on all flour and in g for the version's own batch. */
export function LinesTable({ content, figures, text, format, language }: LinesTableProps) {
  const { sheet } = text
  const names = stageNames(content.stages, text, language)
  const mass = (massG: number | undefined) => (massG === undefined ? text.notThere : format.mass(massG))
  return (
    <SheetTable
      caption={sheet.lines}
      captionHidden
      columns={[
        { key: 'ingredient', label: sheet.ingredient },
        { key: 'pct', label: sheet.onFlour, numeric: true },
        { key: 'mass', label: sheet.weight, numeric: true },
      ]}
    >
      {content.stages.map((stage, s) => {
        const totals = figures?.stages[s]
        return (
          <Fragment key={names[s]}>
            {content.stages.length > 1 ? <GroupRow label={names[s] ?? text.stages[stage.kind]} columns={3} /> : null}
            {stage.lines.map((line, l) => (
              <tr key={`${line.ingredient.id}.${l}`}>
                <Cell head>{line.ingredient.name}</Cell>
                <Cell numeric>{format.pct(line.pctFlour)}</Cell>
                <Cell numeric>{mass(figures?.batch?.lineMassesG[s]?.[l])}</Cell>
              </tr>
            ))}
            {content.stages.length > 1 && totals ? (
              <tr className="text-ink-2">
                <Cell>
                  {totals.flourSharePct > 0
                    ? say(sheet.stageTotalFlour, language, { share: format.pctShort(totals.flourSharePct) })
                    : sheet.stageTotal}
                </Cell>
                <Cell numeric>{format.pct(totals.pctFlour)}</Cell>
                <Cell numeric>{mass(figures?.batch?.stageMassesG[s])}</Cell>
              </tr>
            ) : null}
          </Fragment>
        )
      })}
      {figures ? (
        <tr className="border-t-[1.5px] border-ink font-bold">
          <Cell head>{sheet.doughTotal}</Cell>
          <Cell numeric>{format.pct(figures.totalPct)}</Cell>
          <Cell numeric>{mass(figures.batch?.doughMassG)}</Cell>
        </tr>
      ) : null}
    </SheetTable>
  )
}
