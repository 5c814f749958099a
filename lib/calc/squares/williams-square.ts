import { mustBeWhole } from '../checks'

/**
 * Orders that are balanced for what was before: with an even number of treatments one square, in which each treatment
 * comes right after each other one once; with an odd number two, in which it does so twice.
 * The first row goes 1, 2, n, 3, n − 1, …, the others are it moved on by one; the second square is the first read backwards.
 * @param treatments whole, 2 to 50
 * @returns rows of treatments, numbered from 1: n rows for even n, 2n for odd n; not yet in random order
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: Williams (1949), Australian Journal of Scientific Research A2; MacFie et al. (1989), Journal of Sensory Studies 4.
 * @example williamsSquare({ treatments: 4 }) // 1 2 4 3 / 2 3 1 4 / 3 4 2 1 / 4 1 3 2
 */
export function williamsSquare(q: { treatments: number }): number[][] {
  const n = mustBeWhole('treatments', q.treatments, { min: 2, max: 50 })
  const first = Array.from({ length: n }, (_, place) => (place % 2 === 1 ? (place + 1) / 2 : (n - place / 2) % n))
  const square = Array.from({ length: n }, (_, row) => first.map((treatment) => ((treatment + row) % n) + 1))
  return n % 2 === 0 ? square : [...square, ...square.map((row) => row.toReversed())]
}
