/** What is left of a column below this share of its spread is rounding. */
const RANK_TOLERANCE = 1e-9

/**
 * Columns less their means within each block, which takes the blocks' own effects out of a least-squares fit. A column
 * that does not vary within blocks becomes exact zeros, so that a fit finds it wanting.
 * @param columns p columns of n finite values; @param blocks n names, all alike without blocks
 * @returns the centred columns, and the means by block in order of first appearance
 * Source: Frisch & Waugh (1933), Econometrica 1; Searle (1971), Linear Models, section 7.1 (absorbing a factor).
 * @example centreInBlocks([[1, 3, 10]], ['a', 'a', 'b']).columns // [[-1, 1, 0]]
 */
export function centreInBlocks(
  columns: readonly (readonly number[])[],
  blocks: readonly string[],
): { columns: number[][]; blocks: { count: number; means: number[] }[] } {
  const indexOf = new Map([...new Set(blocks)].map((name, j) => [name, j]))
  const places = blocks.map((name) => indexOf.get(name)!)
  const counts = new Array<number>(indexOf.size).fill(0)
  for (const j of places) counts[j]!++
  const meansOf = (column: readonly number[]) => {
    const sums = new Array<number>(counts.length).fill(0)
    column.forEach((value, i) => (sums[places[i]!]! += value))
    return sums.map((sum, j) => sum / counts[j]!)
  }
  const means = columns.map(meansOf)
  const centred = columns.map((column, c) => {
    const once = column.map((value, i) => value - means[c]![places[i]!]!)
    const left = meansOf(once)
    const twice = once.map((value, i) => value - left[places[i]!]!)
    const first = column[0] ?? 0
    const spread = norm(column.map((value) => value - first))
    return norm(twice) <= RANK_TOLERANCE * spread ? twice.map(() => 0) : twice
  })
  return { columns: centred, blocks: counts.map((count, j) => ({ count, means: means.map((list) => list[j]!) })) }
}

function norm(values: readonly number[]): number {
  return Math.sqrt(values.reduce((sum, value) => sum + value * value, 0))
}
