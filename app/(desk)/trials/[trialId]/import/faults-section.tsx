import { Cell } from '@/lib/ui/cell'
import { Section } from '@/lib/ui/section'
import { SheetTable } from '@/lib/ui/sheet-table'
import type { Words } from '@/lib/words/words'
import type { SeenRows } from './import-state'

/** Every line that is at fault, with its column and why, instead of what would be stored. */
export function FaultsSection({ title, rows, text }: { title: string; rows: SeenRows; text: Words['importing'] }) {
  return (
    <Section id="faults" title={title} note={rows.faultNote}>
      <SheetTable
        caption={title}
        captionHidden
        columns={[
          { key: 'line', label: text.line, numeric: true },
          { key: 'column', label: text.columnName },
          { key: 'fault', label: text.fault },
        ]}
      >
        {rows.faults.map(({ key, line, column, words }) => (
          <tr key={key}>
            <Cell numeric>{line}</Cell>
            <Cell>{column}</Cell>
            <Cell>{words}</Cell>
          </tr>
        ))}
      </SheetTable>
    </Section>
  )
}
