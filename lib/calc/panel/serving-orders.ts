import { CalcError } from '../error'
import { seededRandom } from '../random/seeded-random'
import { shuffle } from '../random/shuffle'
import { williamsSquare } from '../squares/williams-square'
import { type ServingKey, codedServings } from './coded-servings'
import type { PanelSample } from './types'

const MOST_SAMPLES = 12

/**
 * Serving orders for ranking or liking: each sample equally often in each place and right after each other one (Williams),
 * with codes, for the panel leader. Balance is whole when tasters are a multiple of the samples (of twice the samples
 * where these are odd in number); otherwise a warning says so.
 * @param samples 2 to 12 samples, a row for each batch; at least two batches of each, or a warning
 * @param tasters whole, 1 or more, at most 900 portions in all
 * @throws CalcError 'out-of-range', with reason 'number-of-samples' | the errors of codedServings
 * Source: Williams (1949), Australian Journal of Scientific Research A2; MacFie et al. (1989), Journal of Sensory Studies 4.
 * @example see lib/calc/panel/entries.ts
 */
export function servingOrders(q: { seed: string; samples: readonly PanelSample[]; tasters: number }): ServingKey {
  const names = [...new Set(q.samples.map(({ sample }) => sample))]
  if (names.length < 2 || names.length > MOST_SAMPLES) {
    throw new CalcError('out-of-range', {
      field: 'samples',
      value: names.length,
      min: 2,
      max: MOST_SAMPLES,
      reason: 'number-of-samples',
    })
  }
  const named = shuffle(seededRandom(JSON.stringify([q.seed, 'samples'])), names)
  const orders = williamsSquare({ treatments: names.length }).map((row) =>
    row.map((treatment) => named[treatment - 1]!),
  )
  return codedServings({ ...q, orders })
}
