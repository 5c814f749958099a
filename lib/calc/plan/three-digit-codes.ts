import { mustBeWhole } from '../checks'
import { seededRandom } from '../random/seeded-random'
import { shuffle } from '../random/shuffle'

/**
 * Three-digit codes for test doughs, 100 to 999, none twice in a trial; reproducible from the stored seed.
 * @param count whole, 0 to 900
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: random three-digit codes are common practice in sensory work, no source.
 * @example threeDigitCodes({ seed: 'trial-7', count: 3 }) // three different codes, always the same three
 */
export function threeDigitCodes(q: { seed: string; count: number }): string[] {
  mustBeWhole('count', q.count, { min: 0, max: 900 })
  const all = Array.from({ length: 900 }, (_, i) => String(100 + i))
  return shuffle(seededRandom(q.seed), all).slice(0, q.count)
}
