/**
 * Ranks from 1 for the lowest, equal values sharing the mean of their ranks; and Σ(t³ − t) over groups of t equal values.
 * @param values n finite numbers, n ≥ 1
 * Source: Kendall (1948), Rank Correlation Methods, tied ranks.
 * @example midRanks([5, 6, 6]) // ranks 1, 2.5, 2.5; tieSum 6
 */
export function midRanks(values: readonly number[]): { ranks: number[]; tieSum: number } {
  const order = values.map((value, index) => ({ value, index })).sort((a, b) => a.value - b.value)
  const ranks = new Array<number>(values.length).fill(0)
  let tieSum = 0
  for (let from = 0, to = 0; from < order.length; from = to) {
    while (to < order.length && order[to]!.value === order[from]!.value) to++
    for (let place = from; place < to; place++) ranks[order[place]!.index] = (from + 1 + to) / 2
    tieSum += (to - from) ** 3 - (to - from)
  }
  return { ranks, tieSum }
}
