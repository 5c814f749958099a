/** A vector counts as dependent on others when less than this part of its length is left beside them. */
const DEPENDENT = 1e-10

export type OrthonormalBasis = {
  /** Orthonormal vectors spanning the input, one for each of `picked`. */
  basis: number[][]
  /** Indices of an independent selection of the input, in the order taken. */
  picked: number[]
  /** Upper triangle: vector picked[c] = Σ over r ≤ c of triangle[r][c] · basis[r]. */
  triangle: number[][]
}

export function dot(a: readonly number[], b: readonly number[]): number {
  let sum = 0
  for (let i = 0; i < a.length; i++) sum += (a[i] ?? 0) * (b[i] ?? 0)
  return sum
}

/**
 * Orthonormal basis of the span of a few vectors, by modified Gram–Schmidt with pivoting and one repetition
 * (which keeps the basis orthogonal to working precision).
 * @param vectors m vectors of one length; zero and dependent ones are left out
 * Source: Golub and Van Loan, Matrix Computations, section on modified Gram–Schmidt; L. Giraud et al. 2005 ('twice is enough').
 */
export function orthonormalBasis(vectors: readonly (readonly number[])[]): OrthonormalBasis {
  const rest = vectors.map((vector) => [...vector])
  const length = vectors.map((vector) => Math.sqrt(dot(vector, vector)))
  const left = new Set(vectors.keys())
  const coefficients = vectors.map((): number[] => [])
  const basis: number[][] = []
  const picked: number[] = []
  for (;;) {
    let best = -1
    let bestShare = DEPENDENT
    for (const i of left) {
      const vector = rest[i] ?? []
      const share = (length[i] ?? 0) > 0 ? Math.sqrt(dot(vector, vector)) / (length[i] ?? 1) : 0
      if (share > bestShare) {
        best = i
        bestShare = share
      }
    }
    if (best < 0) break
    left.delete(best)
    const vector = rest[best] ?? []
    const own = coefficients[best] ?? []
    basis.forEach((unit, r) => {
      const again = dot(unit, vector)
      own[r] = (own[r] ?? 0) + again
      for (let k = 0; k < vector.length; k++) vector[k] = (vector[k] ?? 0) - again * (unit[k] ?? 0)
    })
    const norm = Math.sqrt(dot(vector, vector))
    const unit = vector.map((value) => value / norm)
    own[basis.length] = norm
    for (const i of left) {
      const other = rest[i] ?? []
      const along = dot(unit, other)
      const theirs = coefficients[i] ?? []
      theirs[basis.length] = along
      for (let k = 0; k < other.length; k++) other[k] = (other[k] ?? 0) - along * (unit[k] ?? 0)
    }
    basis.push(unit)
    picked.push(best)
  }
  const triangle = basis.map((_, r) => picked.map((i, c) => (r <= c ? (coefficients[i]?.[r] ?? 0) : 0)))
  return { basis, picked, triangle }
}

/** Solves triangle · z = y for the upper triangle of an orthonormal basis. */
export function solveTriangle(triangle: readonly (readonly number[])[], y: readonly number[]): number[] {
  const z: number[] = new Array<number>(y.length).fill(0)
  for (let r = y.length - 1; r >= 0; r--) {
    let value = y[r] ?? 0
    for (let c = r + 1; c < y.length; c++) value -= (triangle[r]?.[c] ?? 0) * (z[c] ?? 0)
    z[r] = value / (triangle[r]?.[r] ?? 1)
  }
  return z
}
