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
  // A table has hundreds of these: what is not said of one is not sent either.
  const said = {
    ...(numeric ? { 'data-numeric': true } : {}),
    ...(whole || screenOnly
      ? { className: [whole && 'whitespace-nowrap', screenOnly && 'print:hidden'].filter(Boolean).join(' ') }
      : {}),
  }
  return <td {...said}>{children}</td>
}
