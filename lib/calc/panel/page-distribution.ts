import { mustBeWhole } from '../checks'

/**
 * Exact chance that Page's L is as large as seen or larger, when every taster ranks at random without ties.
 * The distribution of one taster's Σ j rⱼ comes from counting rankings place by place over the sets of ranks used;
 * that of all tasters by convolution. Every term is positive, so the tail keeps its digits.
 * @param tasters whole, 1 to 10 000; @param samples whole, 2 to 10; @param statistic L, whole, between its least and most
 * @returns about 1e-13 relative; 0 below the smallest double
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: Page (1963), JASA 58.
 * @example pageDistribution({ tasters: 1, samples: 2, statistic: 5 }) // 0.5
 */
export function pageDistribution(q: { tasters: number; samples: number; statistic: number }): number {
  const n = mustBeWhole('tasters', q.tasters, { min: 1, max: 10_000 })
  const k = mustBeWhole('samples', q.samples, { min: 2, max: 10 })
  const least = (k * (k + 1) * (k + 2)) / 6
  const most = (k * (k + 1) * (2 * k + 1)) / 6
  const statistic = mustBeWhole('statistic', q.statistic, { min: n * least, max: n * most })
  const one = chancesOfOne(k, least, most)
  let all = [1]
  for (let taster = 0; taster < n; taster++) {
    const next = new Array<number>(all.length + most - least).fill(0)
    all.forEach((chance, i) => one.forEach((step, j) => (next[i + j]! += chance * step)))
    all = next
  }
  // from the far end, where the terms are smallest
  return Math.min(
    1,
    all.slice(statistic - n * least).reduceRight((sum, chance) => sum + chance, 0),
  )
}

/** Chance of each value of one taster's sum, from the least to the most. */
function chancesOfOne(k: number, least: number, most: number): number[] {
  const bySet = Array.from({ length: 2 ** k }, () => new Map<number, number>())
  bySet[0]!.set(0, 1)
  const usedCounts = [0]
  bySet.forEach((sums, used) => {
    usedCounts[used] = usedCounts[used >> 1]! + (used & 1)
    const place = usedCounts[used] + 1
    for (let rank = 1; rank <= k; rank++) {
      const bit = 2 ** (rank - 1)
      if ((used & bit) !== 0) continue
      const next = bySet[used | bit]!
      for (const [sum, chance] of sums) {
        const grown = sum + place * rank
        next.set(grown, (next.get(grown) ?? 0) + chance / (k - place + 1))
      }
    }
  })
  const chances = bySet[2 ** k - 1]!
  return Array.from({ length: most - least + 1 }, (_, i) => chances.get(least + i) ?? 0)
}
