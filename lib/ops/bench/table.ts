export type Table = {
  title: string
  /** What a reader must know to take the figures for what they are: how they were taken, and the target. */
  notes: readonly string[]
  columns: readonly string[]
  /** So many columns are set to the left, the others to the right; one when not said. */
  leftColumns?: number
  rows: readonly (readonly string[])[]
}

const gap = '  '

/**
 * Sets a table in plain text: title, notes, headings, a rule, rows; each column as wide as its longest cell.
 * @throws Error when a row has another number of cells than there are headings
 */
export function setTable({ title, notes, columns, rows, leftColumns = 1 }: Table): string {
  const odd = rows.find((row) => row.length !== columns.length)
  if (odd) throw new Error(`${title}: ${odd.length} cells under ${columns.length} headings (${odd.join(', ')})`)
  const widthOf = (column: number) => Math.max(...[columns, ...rows].flatMap((cells) => cells[column]?.length ?? []))
  const line = (cells: readonly string[]) =>
    cells
      .map((cell, i) => (i < leftColumns ? cell.padEnd(widthOf(i)) : cell.padStart(widthOf(i))))
      .join(gap)
      .trimEnd()
  const rule = columns.map((_, i) => '─'.repeat(widthOf(i))).join(gap)
  return [`── ${title} ──`, ...notes, '', line(columns), rule, ...rows.map(line)].join('\n')
}
