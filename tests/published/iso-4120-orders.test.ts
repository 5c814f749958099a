import { differenceServings } from '@/lib/calc/panel/difference-servings'
import { publishedCheck } from '@/tests/support/published-check'

const samples = ['control', 'malt'].flatMap((sample) =>
  ['1', '2'].map((batch) => ({ sample, batch, allergens: 'wheat' })),
)

/** How often each order came. */
const orders = () => {
  const { servings } = differenceServings({ seed: 's', test: 'triangle', samples, tasters: 300 })
  const counts = new Map<string, number>()
  for (let i = 0; i < servings.length; i += 3) {
    const order = servings
      .slice(i, i + 3)
      .map(({ sample }) => sample[0])
      .join('')
    counts.set(order, (counts.get(order) ?? 0) + 1)
  }
  return [...counts.values()]
}
publishedCheck({
  of: ['panel/difference-servings'],
  what: 'the triangle has six orders',
  source: 'ISO 4120, serving orders',
  status: 'from memory',
  expected: 6,
  got: () => orders().length,
  tolerance: 0,
  why: 'a count',
})
publishedCheck({
  of: ['panel/difference-servings'],
  what: 'each order equally often over 300 tasters',
  source: 'ISO 4120, serving orders',
  status: 'from memory',
  expected: 50,
  got: () => (new Set(orders()).size === 1 ? orders()[0]! : NaN),
  tolerance: 0,
  why: 'a count',
})
