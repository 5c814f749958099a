import { roundUs } from '@/lib/calc/label/round-us'
import { publishedCheck } from '@/tests/support/published-check'

const source = 'FDA Food Labeling Guide, appendix H, 2009, on 21 CFR 101.9(c)'
for (const [nutrient, value, expected] of [
  ['calories', 143.81, 140],
  ['total-fat', 3.06, 3],
  ['total-carbohydrate', 25.24, 25],
  ['fibre', 0.81, 1],
  ['sugars', 2.59, 3],
  ['protein', 3.83, 4],
  ['sodium', 219.4, 220],
] as const) {
  publishedCheck({
    id: 'Q-8.17',
    of: ['label/round-us'],
    what: `${nutrient} ${value} in a serving of 50 g`,
    source,
    status: 'published rule, inputs worked from USDA SR28',
    expected,
    got: () => roundUs({ nutrient, value }).roundedValue,
    tolerance: { absolute: 0 },
    why: 'a rounded figure',
  })
}
publishedCheck({
  id: 'Q-8.17',
  of: ['label/round-us'],
  what: 'fibre 0.81 g: what is said',
  source,
  status: 'published rule',
  expected: 'less-than',
  got: () => roundUs({ nutrient: 'fibre', value: 0.81 }).say,
})
for (const [nutrient, value, expected] of [
  ['calories', 4.9, 0],
  ['calories', 48, 50],
  ['calories', 96, 100],
  ['total-fat', 0.4, 0],
  ['saturated-fat', 2.3, 2.5],
  ['total-fat', 7.4, 7],
  ['sodium', 4.9, 0],
  ['sodium', 133, 135],
  ['sodium', 146, 150],
  ['protein', 0.4, 0],
] as const) {
  publishedCheck({
    id: 'Q-8.16',
    of: ['label/round-us'],
    what: `${nutrient} ${value}`,
    source,
    status: 'published',
    expected,
    got: () => roundUs({ nutrient, value }).roundedValue,
    tolerance: { absolute: 0 },
    why: 'a rounded figure',
  })
}
