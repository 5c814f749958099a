import { mustBeWhole } from '../checks'

/**
 * The standard cyclic Latin square: each row is the one before it, moved on by one. Rows and columns are in order, so it
 * is for reading and for tests; to run one, take latinSquare.
 * @param treatments whole, 2 to 50
 * @returns rows of treatments, numbered from 1
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: Fisher & Yates (1938), Statistical Tables, Latin squares.
 * @example cyclicSquare({ treatments: 3 }) // 1 2 3 / 2 3 1 / 3 1 2
 */
export function cyclicSquare(q: { treatments: number }): number[][] {
  const n = mustBeWhole('treatments', q.treatments, { min: 2, max: 50 })
  return Array.from({ length: n }, (_, row) => Array.from({ length: n }, (_, column) => ((row + column) % n) + 1))
}
