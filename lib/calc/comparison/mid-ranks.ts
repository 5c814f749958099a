import { mustBeReading } from '../checks'

export type MidRanks = {
  /** From 1; tied values share the mean of their places. */
  ranks: number[]
  /** Σ (t³ − t) over groups of t tied values. */
  tieSum: number
}

/**
 * Ranks in ascending order, tied values sharing the mean of their places.
 * @param values any number of finite values
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: Kruskal & Wallis (1952), JASA 47, section 2.
 * @example midRanks('values', [5, 2, 5]).ranks // [2.5, 1, 2.5]
 */
export function midRanks(field: string, values: readonly number[]): MidRanks {
  values.forEach((value, i) => mustBeReading(`${field}[${i}]`, value))
  const order = values.map((_, i) => i).sort((a, b) => values[a]! - values[b]!)
  const ranks = new Array<number>(values.length).fill(0)
  let tieSum = 0
  for (let from = 0; from < order.length; ) {
    let to = from
    while (to < order.length && values[order[to]!] === values[order[from]!]) to++
    const tied = to - from
    tieSum += tied ** 3 - tied
    for (const i of order.slice(from, to)) ranks[i] = (from + 1 + to) / 2
    from = to
  }
  return { ranks, tieSum }
}
