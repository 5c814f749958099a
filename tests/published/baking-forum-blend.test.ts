import { blendToFigure } from '@/lib/calc/flour/blend-to-figure'
import { publishedCheck } from '@/tests/support/published-check'

const source = 'Baking forum, flour of 14.2 % and flour of 8 %'
const blend = (wantedPct: number) =>
  blendToFigure({ firstPct: 14.2, secondPct: 8, wantedPct, basis: 'as-is', massG: 124 })
for (const [what, status, expected, got] of [
  ['to 9.2 %: part of the strong flour, %', 'published inputs', 19.355, () => blend(9.2).firstPartPct],
  ['to 9.2 %: strong flour for 100 g of the weak one', 'published inputs', 24, () => blend(9.2).firstMassG],
  [
    'what the forum uses, 25 g on 100 g, gives 9.24 %: that part again, %',
    'published',
    20,
    () => blend(9.24).firstPartPct,
  ],
] as const) {
  publishedCheck({
    id: 'Q-3.5',
    of: ['flour/blend-to-figure'],
    what,
    source,
    status,
    expected,
    got,
    tolerance: { absolute: 5e-4 },
    why: 'half of the third decimal',
  })
}
