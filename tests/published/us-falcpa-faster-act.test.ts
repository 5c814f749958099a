import { declaredAllergens } from '@/lib/calc/label/declared-allergens'
import { ALLERGENS } from '@/lib/calc/label/types'
import { publishedCheck } from '@/tests/support/published-check'

const source = 'US Food Allergen Labeling and Consumer Protection Act (2004) and FASTER Act (2021)'
const us = declaredAllergens({ present: ALLERGENS, region: 'us' })

publishedCheck({
  id: 'P-5.18',
  of: ['label/declared-allergens'],
  what: 'allergens that the United States list: eight of 2004 and sesame',
  source,
  status: 'published',
  expected: 9,
  got: () => new Set(us.declared.map(({ group }) => group)).size,
  tolerance: { absolute: 0 },
  why: 'a count',
})
publishedCheck({
  id: 'P-5.18',
  of: ['label/declared-allergens'],
  what: 'gluten cereals that wheat there does not cover, of which whoever must avoid them is told',
  source,
  status: 'published',
  expected: 'rye barley oats',
  got: () => us.notListed.filter((one) => ['wheat', 'spelt', 'khorasan-wheat', 'rye', 'barley', 'oats'].includes(one)).join(' '),
})
