import { doughMassForPiecesG, type LossConvention } from '@/lib/calc/formula/dough-mass-for-pieces'
import { massesFromPercentages } from '@/lib/calc/formula/masses-from-percentages'
import { breadYieldPct } from '@/lib/calc/loaf/bread-yield'
import { publishedCheck } from '@/tests/support/published-check'

const source =
  "German bakers' vocational school exercise, 2013: 18 loaves of 1500 g, bake loss 12.5 %, fermentation and scaling loss 2 %"
const target = (combine: LossConvention['combine']) =>
  ({ by: 'pieces', pieces: 18, pieceMassG: 1500, lossShares: [0.125, 0.02], losses: { on: 'dough', combine } }) as const
const rye = massesFromPercentages({
  lines: [
    { id: 'rye', pctFlour: 70, isFlour: true },
    { id: 'wheat', pctFlour: 30, isFlour: true },
    { id: 'water', pctFlour: 85, isFlour: false },
    { id: 'yeast', pctFlour: 1.5, isFlour: false },
    { id: 'salt', pctFlour: 2.2, isFlour: false },
  ],
  target: target('added'),
})
const mass = (id: string) => rye.lines.find((l) => l.id === id)?.massG ?? Number.NaN

publishedCheck({
  id: 'P-1.5',
  of: ['formula/dough-mass-for-pieces'],
  what: 'dough, losses added to 14.5 %',
  source,
  status: 'published',
  expected: 31_579,
  got: () => doughMassForPiecesG(target('added')),
  tolerance: { absolute: 0.5 },
  why: 'printed to the gram',
})
publishedCheck({
  id: 'P-1.5',
  of: ['formula/masses-from-percentages'],
  what: 'recipe on 1000 g of flour',
  source,
  status: 'published',
  expected: 1887,
  got: () => (1000 * rye.doughMassG) / rye.flourMassG,
  tolerance: { absolute: 1e-6 },
  why: 'exact arithmetic',
})
// The exercise multiplies by a key rounded to 16.735, so its lines lie up to 5e-5 off the unrounded ones.
for (const [id, expected] of [
  ['rye', 11_714.5],
  ['wheat', 5020.5],
  ['water', 14_224.8],
  ['yeast', 251.0],
  ['salt', 368.2],
] as const) {
  publishedCheck({
    id: 'P-1.5',
    of: ['formula/masses-from-percentages'],
    what: `${id}, g`,
    source,
    status: 'published inputs',
    expected,
    got: () => mass(id),
    tolerance: { relative: 2e-4 },
    why: 'the worked lines use the key rounded to 16.735 and are printed to 0.1 g',
  })
}
publishedCheck({
  id: 'P-1.6',
  of: ['formula/dough-mass-for-pieces'],
  what: 'dough, the same losses compounded',
  source,
  status: 'published inputs',
  expected: 31_486.9,
  got: () => doughMassForPiecesG(target('compounded')),
  tolerance: { absolute: 0.05 },
  why: 'worked to 0.1 g; 92 g less than with losses added',
})
publishedCheck({
  id: 'P-6.7',
  of: ['loaf/bread-yield'],
  what: 'bread yield of gross dough yield 188.7 and loss 14.5 %',
  source,
  status: 'published inputs',
  expected: 161.34,
  got: () => breadYieldPct({ grossDoughYieldPct: 188.7, lossShare: 0.145 }),
  tolerance: { absolute: 0.005 },
  why: 'half of the second decimal',
})
