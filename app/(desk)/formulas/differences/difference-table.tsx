import { Cell } from '@/lib/ui/cell'
import { SheetTable } from '@/lib/ui/sheet-table'

type DifferenceTableProps = {
  caption: string
  what: string
  sides: { from: string; to: string }
  rows: readonly { key: string; label: string; from: string; to: string; isSame: boolean }[]
}

/** Two columns of quantities; a row whose two are alike is light. */
export function DifferenceTable({ caption, what, sides, rows }: DifferenceTableProps) {
  return (
    <SheetTable
      caption={caption}
      captionHidden
      columns={[
        { key: 'what', label: what },
        { key: 'from', label: sides.from, numeric: true },
        { key: 'to', label: sides.to, numeric: true },
      ]}
    >
      {rows.map((row) => (
        <tr key={row.key} className={row.isSame ? 'text-ink-2' : undefined}>
          <Cell head>
            <span className={row.isSame ? 'font-normal' : undefined}>{row.label}</span>
          </Cell>
          <Cell numeric>{row.from}</Cell>
          <Cell numeric>{row.to}</Cell>
        </tr>
      ))}
    </SheetTable>
  )
}
