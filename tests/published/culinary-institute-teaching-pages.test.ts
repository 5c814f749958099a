import { massToBuy } from '@/lib/calc/cost/mass-to-buy'
import { publishedCheck } from '@/tests/support/published-check'

for (const [what, preparedFromG, preparedToG, expected] of [
  ['80 oz of lemons give 36.5 oz of juice: yield, %', 80, 36.5, 45.625],
  ['80 oz of carrots less 8.8 oz of trim: yield, %', 80, 80 - 8.8, 89],
] as const) {
  publishedCheck({
    id: 'Q-11.1',
    of: ['cost/mass-to-buy'],
    what,
    source: 'Culinary Institute of America teaching pages',
    status: 'published',
    expected,
    got: () => massToBuy({ preparedFromG, preparedToG, neededG: 1 }).usableYieldPct,
    tolerance: { relative: 1e-12 },
    why: 'exact arithmetic',
  })
}
