import { firmnessAt } from '@/lib/calc/staling/firmness-at'
import { halfLifeDays } from '@/lib/calc/staling/half-life'
import { publishedCheck } from '@/tests/support/published-check'

const source = 'S. J. Cornford, D. W. E. Axford, G. A. H. Elton (1964), Cereal Chemistry 41: 216–229'

for (const [days, expected] of [
  [1, 4.3625],
  [3, 7.2005],
  [5, 8.6098],
] as const) {
  publishedCheck({
    id: 'P-11.2',
    of: ['staling/firmness-at'],
    what: `firmness from 2 towards 10 at 0.35 a day, after ${days} days`,
    source,
    status: 'published definition, worked',
    expected,
    got: () => firmnessAt({ startFirmness: 2, endFirmness: 10, ratePerDay: 0.35, days }),
    tolerance: { absolute: 5e-5 },
    why: 'half of the fourth decimal',
  })
}
publishedCheck({
  id: 'P-11.1',
  of: ['staling/firmness-at'],
  what: '(E∞ − E)/(E∞ − E₀) after 4 days is exp(−4k)',
  source,
  status: 'published definition',
  expected: Math.exp(-1.4),
  got: () => (10 - firmnessAt({ startFirmness: 2, endFirmness: 10, ratePerDay: 0.35, days: 4 })) / 8,
  tolerance: { relative: 1e-12 },
  why: 'the definition itself, in floating point',
})
publishedCheck({
  id: 'P-11.2',
  of: ['staling/half-life'],
  what: 'half-life at 0.35 a day, days',
  source,
  status: 'published definition, worked',
  expected: 1.9804,
  got: () => halfLifeDays({ ratePerDay: 0.35 }),
  tolerance: { absolute: 5e-5 },
  why: 'half of the fourth decimal',
})
