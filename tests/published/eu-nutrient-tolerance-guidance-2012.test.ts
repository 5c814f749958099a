import { declaredTolerance } from '@/lib/calc/label/declared-tolerance'
import { roundDeclared } from '@/lib/calc/label/round-declared'
import { publishedCheck } from '@/tests/support/published-check'

for (const [nutrient, value, expected] of [
  ['energy-kj', 1043.5, 1044],
  ['energy-kcal', 247.4, 247],
  ['fat', 12.6, 13],
  ['fat', 9.46, 9.5],
  ['fat', 0.51, 0.5],
  ['carbohydrate', 48.5, 49],
  ['sugars', 0.5, 0],
  ['protein', 8.04, 8],
  ['fibre', 3.25, 3.3],
  ['saturates', 0.11, 0.1],
  ['saturates', 0.1, 0],
  ['salt', 1.163, 1.2],
  ['salt', 0.997, 1],
  ['salt', 0.087, 0.09],
  ['salt', 0.0125, 0],
] as const) {
  publishedCheck({
    of: ['label/round-declared'],
    what: `${nutrient}, ${value} in 100 g, as declared`,
    source:
      'European Commission, Guidance document on tolerances for nutrient values, December 2012, table 4, as reproduced by a Greek food consultancy',
    status: 'published rule, figures invented',
    expected,
    got: () => roundDeclared({ nutrient, value }).roundedValue,
    tolerance: expected === 0 ? { absolute: 0 } : { relative: 1e-12 },
    why: 'the rule leaves one figure',
  })
}

// 100 g of a sweet bread, worked in regulation-1169-2011.test.ts: rounded last, so that its energy is not that of rounded nutrients.
for (const [nutrient, value, expected] of [
  ['energy-kj', 1200.14, 1200],
  ['energy-kcal', 284.38, 284],
  ['fat', 6.1203, 6.1],
  ['carbohydrate', 48.8608, 49],
  ['sugars', 5.1738, 5.2],
  ['fibre', 1.6223, 1.6],
  ['protein', 7.6516, 7.7],
  ['salt', 1.0971, 1.1],
] as const) {
  publishedCheck({
    id: 'Q-8.13',
    of: ['label/round-declared'],
    what: `${nutrient} ${value} of a sweet bread`,
    source: 'European Commission, guidance on tolerances of December 2012, as a food laboratory gives it',
    status: 'published inputs',
    expected,
    got: () => roundDeclared({ nutrient, value }).roundedValue,
    tolerance: { absolute: 1e-12 },
    why: 'a rounded figure',
  })
}

for (const [nutrient, declaredG, offG, status] of [
  ['carbohydrate', 9, 2, 'published'],
  ['sugars', 20, 4, 'published'],
  ['protein', 50, 8, 'published'],
  ['fibre', 6, 2, 'published'],
  ['fat', 9, 1.5, 'published'],
  ['fat', 30, 6, 'from memory'],
  ['fat', 50, 8, 'from memory'],
  ['saturates', 3, 0.8, 'from memory'],
  ['saturates', 10, 2, 'from memory'],
  ['salt', 1, 0.375, 'from memory'],
  ['salt', 2, 0.4, 'from memory'],
] as const) {
  publishedCheck({
    id: 'Q-8.14',
    of: ['label/declared-tolerance'],
    what: `${nutrient}, ${declaredG} g declared: so much may it be off`,
    source: 'European Commission, guidance on tolerances of December 2012, table 1',
    status,
    expected: offG,
    got: () => declaredTolerance({ nutrient, declaredG, measuredG: declaredG }).mostG - declaredG,
    tolerance: { absolute: 1e-9 },
    why: 'a printed figure',
  })
}
