import type { ReactNode } from 'react'

export type SheetTableProps = {
  caption: string
  /** The caption stays for screen readers when a section title already says it. */
  captionHidden?: boolean
  /** `screenOnly` for a column of buttons; its cells say so too. */
  columns: readonly { key: string; label: string; numeric?: boolean; screenOnly?: boolean }[]
  /** Rows: `tr` with `Cell` inside, in the order of the columns. */
  children: ReactNode
}

/** A table between fine rules. It scrolls sideways on a narrow screen and repeats its head on every printed page. */
export function SheetTable({ caption, captionHidden = false, columns, children }: SheetTableProps) {
  return (
    // A region that scrolls must be reachable by keyboard, or its last columns are not.
    // eslint-disable-next-line jsx-a11y/no-noninteractive-tabindex
    <div role="group" aria-label={caption} tabIndex={0} className="sheet-scroll">
      <table className="sheet-table">
        <caption className={captionHidden ? 'sr-only' : 'mb-2 text-left text-small text-ink-2'}>{caption}</caption>
        <thead>
          <tr>
            {columns.map((column) => (
              <th
                key={column.key}
                scope="col"
                {...(column.numeric ? { 'data-numeric': true } : {})}
                {...(column.screenOnly ? { className: 'print:hidden' } : {})}
              >
                {column.label}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>{children}</tbody>
      </table>
    </div>
  )
}
