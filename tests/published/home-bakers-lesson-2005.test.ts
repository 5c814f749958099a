import { levain } from '@/lib/calc/preferment/levain'
import { publishedCheck } from '@/tests/support/published-check'

// One pound of flour and one of water; the rule does not know its unit, so ounces stand for grams.
const feed = (starter: number) =>
  levain({
    levainMassG: 32 + starter,
    levainHydrationPct: 100,
    starterHydrationPct: 100,
    starterBy: 'fresh-flour',
    starterPct: (100 * starter) / 16,
  })

for (const [what, expected, got, decimals] of [
  ['14 oz of starter on 16 oz of flour: starter of a feed, oz', 14, () => feed(14).starterG, 1e-9],
  ['the same in the whole mix, %', 30.435, () => feed(14).starterInMixPct, 5e-4],
  ['first days, 16 oz of starter: on fresh flour, %', 100, () => feed(16).starterOnFreshFlourPct, 1e-9],
  ['first days, 16 oz of starter: in the whole mix, %', 33.333, () => feed(16).starterInMixPct, 5e-4],
] as const) {
  publishedCheck({
    id: 'Q-1.6',
    of: ['preferment/levain'],
    what,
    source: 'Home bakers’ lesson page, 2005, feeding chart',
    status: 'published inputs',
    expected,
    got,
    tolerance: { absolute: decimals },
    why: 'half of the last digit worked out',
  })
}
