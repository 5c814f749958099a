const firstMs = 1_000
const longestMs = 60_000

/**
 * How long to wait after so many failures in a row, ms: twice as long each time, 60 s at most, and between half and
 * all of that, so that tablets which lost the book together do not come back together.
 * @param chance from 0 to below 1
 */
export function backOffMs(failures: number, chance: number): number {
  const most = Math.min(longestMs, firstMs * 2 ** Math.max(0, failures - 1))
  return most * (0.5 + chance / 2)
}
