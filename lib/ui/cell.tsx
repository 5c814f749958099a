import type { ReactNode } from 'react'

export type CellProps = {
  /** Right aligned and never broken, under a numeric column. */
  numeric?: boolean
  /** The cell that names its row. */
  head?: boolean
  children?: ReactNode
}

/** One cell of a `SheetTable`. */
export function Cell({ numeric = false, head = false, children }: CellProps) {
  if (head) return <th scope="row">{children}</th>
  return <td data-numeric={numeric || undefined}>{children}</td>
}
