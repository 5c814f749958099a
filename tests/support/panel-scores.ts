import type { ScoreRow } from '@/lib/calc/panel/types'

/** A row for each taster and a column for each sample (A, B, C …), as the list that the calculations take. */
export function scoresOf(rows: readonly (readonly number[])[]): ScoreRow[] {
  return rows.flatMap((row, i) =>
    row.map((score, j) => ({ taster: `taster ${i + 1}`, sample: String.fromCharCode('A'.charCodeAt(0) + j), score })),
  )
}
