import { CalcError } from '../error'
import type { Matrix } from './types'

/**
 * Eigenvalues and orthonormal eigenvectors of a small symmetrical matrix, by cyclic Jacobi rotations.
 * @param matrix k × k, k ≥ 1
 * @returns values, and the vectors as rows in the same order
 * @throws CalcError 'no-convergence' after 60 sweeps
 * Source: Golub & Van Loan, Matrix Computations, 4th ed. (2013), section 8.5.
 */
export function symmetricEigen(matrix: Matrix): { values: number[]; vectors: number[][] } {
  const k = matrix.length
  const a = matrix.map((row) => [...row])
  const vectors = matrix.map((_, i) => matrix.map((__, j) => (i === j ? 1 : 0)))
  const scale = Math.max(...matrix.flat().map(Math.abs))
  for (let sweep = 0; sweep < 60; sweep++) {
    let off = 0
    for (let i = 0; i < k; i++) for (let j = 0; j < i; j++) off = Math.max(off, Math.abs(a[i]![j]!))
    if (off <= 1e-15 * scale) return { values: a.map((row, i) => row[i]!), vectors }
    for (let i = 1; i < k; i++) for (let j = 0; j < i; j++) rotate(a, vectors, i, j)
  }
  throw new CalcError('no-convergence', { field: 'matrix', value: k })
}

/** Makes a[i][j] zero. */
function rotate(a: number[][], vectors: number[][], i: number, j: number): void {
  if (a[i]![j] === 0) return
  const tau = (a[i]![i]! - a[j]![j]!) / (2 * a[i]![j]!)
  const t = (tau >= 0 ? 1 : -1) / (Math.abs(tau) + Math.hypot(1, tau))
  const c = 1 / Math.hypot(1, t)
  const s = t * c
  const turn = (p: number[], q: number[]) => {
    p.forEach((value, m) => {
      const other = q[m]!
      p[m] = c * value + s * other
      q[m] = c * other - s * value
    })
  }
  turn(a[i]!, a[j]!)
  for (const row of a) {
    const [x, y] = [row[i]!, row[j]!]
    row[i] = c * x + s * y
    row[j] = c * y - s * x
  }
  turn(vectors[i]!, vectors[j]!)
}
