import { mustBeWithin } from '../checks'
import { CalcError } from '../error'
import type { Random } from './seeded-random'

const STEPS = 2 ** 53
const MOST_TRIES = 1000

/**
 * A whole number from 0 to count − 1, each equally likely: draws that would favour the low numbers are thrown away.
 * @param count how many numbers there are, 1 ≤ count ≤ 2³²
 * @throws CalcError 'not-finite' | 'out-of-range'; 'no-convergence' when `random` keeps giving the same refused number
 * Source: rejection of the incomplete last cycle, see Lemire (2019), "Fast random integer generation in an interval".
 */
export function randomIndex(random: Random, count: number): number {
  mustBeWithin('count', count, { min: 1, max: 2 ** 32 })
  const limit = STEPS - (STEPS % count)
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    const draw = Math.floor(random() * STEPS)
    if (draw < limit) return draw % count
  }
  throw new CalcError('no-convergence', { field: 'random', value: MOST_TRIES })
}
