import { seededRandom } from '../random/seeded-random'
import { shuffle } from '../random/shuffle'
import { cyclicSquare } from './cyclic-square'

/**
 * A Latin square in random order: rows, columns and treatments of the cyclic square are shuffled. That is enough for an
 * unbiased error; not every Latin square of the size can come out. The same seed gives the same square.
 * @param seed stored with the plan; @param treatments whole, 2 to 50
 * @returns rows of treatments, numbered from 1; each once in every row and every column
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: Fisher (1935), The Design of Experiments; Yates (1933), Empire Journal of Experimental Agriculture 1.
 * @example latinSquare({ seed: 'trial-7', treatments: 4 }) // four rows, always the same four
 */
export function latinSquare(q: { seed: string; treatments: number }): number[][] {
  const square = cyclicSquare(q)
  const random = seededRandom(q.seed)
  const columns = shuffle(random, square[0]!)
  const names = shuffle(random, square[0]!)
  return shuffle(random, square).map((row) => columns.map((column) => names[row[column - 1]! - 1]!))
}
