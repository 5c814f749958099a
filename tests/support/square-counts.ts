/** How often each treatment is in each row and column of a set of rows, and how often each comes right after each other. */
export function squareCounts(rows: readonly (readonly number[])[]): {
  rows: number
  columns: number
  inRow: number[]
  inColumn: number[]
  after: number[]
} {
  const treatments = [...new Set(rows.flat())]
  const columns = rows[0]!.length
  const count = (values: readonly number[], wanted: number) => values.filter((value) => value === wanted).length
  const distinct = (counts: number[]) => [...new Set(counts)]
  return {
    rows: rows.length,
    columns,
    inRow: distinct(rows.flatMap((row) => treatments.map((treatment) => count(row, treatment)))),
    inColumn: distinct(
      Array.from({ length: columns }, (_, j) => rows.map((row) => row[j]!)).flatMap((column) =>
        treatments.map((one) => count(column, one)),
      ),
    ),
    after: distinct(
      treatments.flatMap((one) =>
        treatments
          .filter((other) => other !== one)
          .map((other) =>
            rows.reduce((sum, row) => sum + row.filter((value, i) => value === other && row[i - 1] === one).length, 0),
          ),
      ),
    ),
  }
}
