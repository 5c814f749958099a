import type { ReactNode } from 'react'

export type CellProps = {
  /** Right aligned and never broken, under a numeric column. */
  numeric?: boolean
  /** Never broken: a date, a code. */
  whole?: boolean
  /** Not printed, as its column. */
  screenOnly?: boolean
  /** The cell that names its row. */
  head?: boolean
  children?: ReactNode
}

/** One cell of a `SheetTable`. */
export function Cell({ numeric = false, whole = false, screenOnly = false, head = false, children }: CellProps) {
  if (head) return <th scope="row">{children}</th>
  return (
    <td
      data-numeric={numeric || undefined}
      className={`${whole ? 'whitespace-nowrap' : ''} ${screenOnly ? 'print:hidden' : ''}`}
    >
      {children}
    </td>
  )
}
