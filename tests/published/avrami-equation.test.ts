import { avramiExponent } from '@/lib/calc/staling/avrami-exponent'
import { halfLifeDays } from '@/lib/calc/staling/half-life'
import { publishedCheck } from '@/tests/support/published-check'

const found = () =>
  avramiExponent({
    startFirmness: 2,
    endFirmness: 10,
    firstDays: 1,
    firstFirmness: 3.5,
    secondDays: 4,
    secondFirmness: 7.4,
  })
for (const [of, what, expected, got] of [
  ['staling/avrami-exponent', 'exponent', 1.2182, () => found().avramiExponent],
  ['staling/avrami-exponent', 'rate', 0.207639, () => found().ratePerDay],
  [
    'staling/half-life',
    'half-way after, days',
    2.69,
    () => halfLifeDays({ ratePerDay: 0.207639, avramiExponent: 1.2182 }),
  ],
] as const) {
  publishedCheck({
    id: 'Q-7.3',
    of: [of],
    what: `from 2 towards 10, 3.5 on day 1 and 7.4 on day 4: ${what}`,
    source: 'Avrami equation, worked by hand',
    status: 'worked',
    expected,
    got,
    tolerance: { relative: 2e-5 },
    why: 'worked to five digits',
  })
}
