import { CalcError } from '../error'
import { normalQuantile } from '../distributions/normal-quantile'
import type { Random } from './seeded-random'

const MOST_TRIES = 1000

/**
 * A standard normal deviate by inversion: one uniform number gives one deviate, so a stream stays in step.
 * @returns mean 0, SD 1, within ±8.3 (the 53-bit grid of the uniform number)
 * @throws CalcError 'no-convergence' when `random` gives nothing but 0
 * Source: inversion with Wichura (1988), algorithm AS 241.
 */
export function normalDeviate(random: Random): number {
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    const u = random()
    if (u > 0) return normalQuantile({ p: u, tail: 'lower' })
  }
  throw new CalcError('no-convergence', { field: 'random', value: MOST_TRIES })
}
