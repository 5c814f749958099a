import { fTail } from '../distributions/f-tail'

/** A column whose length beside those before it is less than 1e-5 of its own counts as made up of them. */
const DEPENDENT = 1e-10
/** A sum of squares at or below this share of the whole is rounding. */
const ROUNDING = 1e-24

/**
 * Exact F test that a random factor has no variance: what its levels take out of the rows beyond the fixed part, and
 * beyond the other random factor that it is nested in, against what is left. Balanced data give the classical table.
 * @param x n × p by rows, the fixed part; @param y n values with nothing large in common
 * @param levels of the factor, of each row; @param within levels of the factor that it is nested in, if any
 * @returns numerator and denominator df, F and its upper tail; null where the factor has no df of its own, where none is
 * left for the residual, or where nothing is left
 * Source: Seely & El-Bassiouni (1983), "Applying Wald's variance component test", Ann. Stat. 11.
 */
export function testAgainstResidual(q: {
  x: readonly (readonly number[])[]
  y: readonly number[]
  levels: readonly string[]
  within?: readonly string[]
}): { df1: number; df2: number; f: number; p: number } | null {
  const whole = q.y.reduce((sum, value) => sum + value * value, 0)
  const without = leftOver(q.x, q.y, q.within ?? q.y.map(() => 'all'))
  const left = leftOver(q.x, q.y, q.levels)
  const [df1, df2] = [left.rank - without.rank, q.y.length - left.rank]
  if (df1 < 1 || df2 < 1 || left.sumSquares <= ROUNDING * whole) return null
  const f = Math.max(0, without.sumSquares - left.sumSquares) / df1 / (left.sumSquares / df2)
  return { df1, df2, f, p: fTail({ f, df1, df2, tail: 'upper' }) }
}

/** Rank of the columns and groups together, and the sum of squares of y that they leave. */
function leftOver(
  x: readonly (readonly number[])[],
  y: readonly number[],
  groups: readonly string[],
): { rank: number; sumSquares: number } {
  const kept: number[][] = []
  for (let j = 0; j < x[0]!.length; j++) {
    const column = x.map((row) => row[j]!)
    const rest = beside(kept, aboutMeans(column, groups))
    const size = dot(rest, rest)
    if (size > DEPENDENT * dot(column, column)) kept.push(rest.map((value) => value / Math.sqrt(size)))
  }
  const rest = beside(kept, aboutMeans(y, groups))
  return { rank: new Set(groups).size + kept.length, sumSquares: dot(rest, rest) }
}

/** What of a column is at right angles to others of length 1: taken out twice, so that it is so to rounding. */
function beside(others: readonly (readonly number[])[], column: readonly number[]): number[] {
  let rest = [...column]
  for (const other of [...others, ...others]) {
    const share = dot(rest, other)
    rest = rest.map((value, i) => value - share * other[i]!)
  }
  return rest
}

function aboutMeans(values: readonly number[], groups: readonly string[]): number[] {
  const sums = new Map<string, { sum: number; count: number }>()
  values.forEach((value, i) => {
    const own = sums.get(groups[i]!) ?? { sum: 0, count: 0 }
    sums.set(groups[i]!, { sum: own.sum + value, count: own.count + 1 })
  })
  return values.map((value, i) => {
    const { sum, count } = sums.get(groups[i]!)!
    return value - sum / count
  })
}

const dot = (a: readonly number[], b: readonly number[]) => a.reduce((sum, value, i) => sum + value * b[i]!, 0)
