import type { Matrix } from './types'

/**
 * Product of matrices from left to right.
 * @param matrices by rows, two or more, each as wide as the next is high; all with a row at least
 * @example matrixProduct([[1, 2]], [[3], [4]]) // [[11]]
 */
export function matrixProduct(...matrices: [Matrix, Matrix, ...Matrix[]]): number[][] {
  const [first, ...rest] = matrices
  return rest.reduce<number[][]>(
    (left, right) => {
      const width = right[0]!.length
      return left.map((row) => {
        const sums = new Array<number>(width).fill(0)
        row.forEach((value, m) => {
          if (value === 0) return
          const other = right[m]!
          for (let j = 0; j < width; j++) sums[j]! += value * other[j]!
        })
        return sums
      })
    },
    first.map((row) => [...row]),
  )
}
