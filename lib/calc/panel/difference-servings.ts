import { CalcError } from '../error'
import { type ServingKey, codedServings } from './coded-servings'
import type { DifferenceTest, PanelSample } from './types'

/** 0 stands for the first sample named, 1 for the second. In the duo-trio the first place is the open reference. */
const PAIR = [
  [0, 1],
  [1, 0],
] as const
const ORDERS: Readonly<Record<DifferenceTest, readonly (readonly (0 | 1)[])[]>> = {
  triangle: [
    [0, 0, 1],
    [0, 1, 0],
    [1, 0, 0],
    [1, 1, 0],
    [1, 0, 1],
    [0, 1, 1],
  ],
  'duo-trio': [
    [0, 0, 1],
    [0, 1, 0],
    [1, 0, 1],
    [1, 1, 0],
  ],
  'three-afc': [
    [0, 0, 1],
    [0, 1, 0],
    [1, 0, 0],
  ],
  paired: PAIR,
  'paired-two-sided': PAIR,
}

/**
 * Serving orders for a difference or similarity test of two samples, each order equally often, with codes, for the panel
 * leader. In the 3-AFC the second sample is the odd one throughout, so it is the one thought to have more of the quality asked.
 * @param samples two samples, a row for each batch; at least two batches of each, or a warning
 * @param tasters whole, 1 or more, at most 900 portions in all; a multiple of the orders (6, 4, 3 or 2), or a warning
 * @throws CalcError 'out-of-range', with reason 'number-of-samples' | the errors of codedServings
 * Source: ISO 4120 (triangle), ISO 10399 (duo-trio, balanced reference), ISO 5495 (paired comparison); 3-AFC: Green & Swets
 * (1966), Signal Detection Theory and Psychophysics.
 * @example see lib/calc/panel/entries.ts
 */
export function differenceServings(q: {
  seed: string
  test: DifferenceTest
  samples: readonly PanelSample[]
  tasters: number
}): ServingKey {
  const names = [...new Set(q.samples.map(({ sample }) => sample))]
  if (names.length !== 2) {
    throw new CalcError('out-of-range', {
      field: 'samples',
      value: names.length,
      min: 2,
      max: 2,
      reason: 'number-of-samples',
    })
  }
  const orders = ORDERS[q.test].map((order) => order.map((which) => names[which]!))
  return codedServings({ ...q, orders })
}
