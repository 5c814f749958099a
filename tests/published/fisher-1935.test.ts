import { batchOrder } from '@/lib/calc/plan/batch-order'
import { publishedCheck } from '@/tests/support/published-check'

const TRIALS = 6000
const arms = ['A', 'B', 'C'].map((arm) => ({ arm, batchesPerBlock: 1, addedAllergens: [] }))
const orders = () => {
  const counts = new Map<string, number>()
  for (let trial = 0; trial < TRIALS; trial++) {
    const order = batchOrder({ seed: `trial ${trial}`, blocks: ['1'], arms })
      .batches.map(({ arm }) => arm)
      .join('')
    counts.set(order, (counts.get(order) ?? 0) + 1)
  }
  return counts
}

for (const order of ['ABC', 'ACB', 'BAC', 'BCA', 'CAB', 'CBA']) {
  publishedCheck({
    of: ['plan/batch-order'],
    what: `every order of three in a block is as likely as any other: ${order}`,
    source: 'R. A. Fisher, The Design of Experiments, 1935, sections 9 and 20 (rule; from memory)',
    status: 'published inputs',
    expected: 1 / 6,
    got: () => (orders().get(order) ?? 0) / TRIALS,
    tolerance: { absolute: 4 * Math.sqrt(5 / 36 / TRIALS) },
    why: 'four standard errors of a share of 6000 orders',
  })
}
