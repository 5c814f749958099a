import type { ContentDifferences } from '@/lib/kitchen/formulas/differences-of-content'
import { Cell } from '@/lib/ui/cell'
import { SheetTable } from '@/lib/ui/sheet-table'
import type { Words } from '@/lib/words/words'
import type { FormulaFormat } from '@/lib/words/format/formula-format'

type LinesDifferenceProps = {
  lines: ContentDifferences['lines']
  sides: { from: string; to: string }
  text: Words['formulas']
  format: FormulaFormat
}

/** Two versions line by line, in % on flour; a line that is alike is light. */
export function LinesDifference({ lines, sides, text, format }: LinesDifferenceProps) {
  const { compare } = text
  return (
    <SheetTable
      caption={compare.lines}
      captionHidden
      columns={[
        { key: 'ingredient', label: compare.ingredient },
        { key: 'stage', label: compare.stage },
        { key: 'from', label: sides.from, numeric: true },
        { key: 'to', label: sides.to, numeric: true },
        { key: 'difference', label: compare.difference, numeric: true },
      ]}
    >
      {lines.map((line) => (
        <tr
          key={`${line.stageKind}.${line.stageNumber}.${line.ingredientId}`}
          className={line.isSame ? 'text-ink-2' : undefined}
        >
          <Cell head>
            <span className={line.isSame ? 'font-normal' : undefined}>{line.ingredientName}</span>
          </Cell>
          <Cell>{line.stageName || text.stages[line.stageKind]}</Cell>
          <Cell numeric>{line.fromPct === null ? text.notThere : format.pct(line.fromPct)}</Cell>
          <Cell numeric>{line.toPct === null ? text.notThere : format.pct(line.toPct)}</Cell>
          <Cell numeric>
            {line.isSame
              ? text.notThere
              : line.fromPct === null
                ? compare.added
                : line.toPct === null
                  ? compare.gone
                  : format.pctDifference(line.toPct - line.fromPct)}
          </Cell>
        </tr>
      ))}
    </SheetTable>
  )
}
