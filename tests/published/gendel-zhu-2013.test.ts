import { declaredAllergens } from '@/lib/calc/label/declared-allergens'
import { publishedCheck } from '@/tests/support/published-check'

publishedCheck({
  id: 'P-12.5',
  of: ['label/declared-allergens'],
  what: 'undeclared milk in bakery goods is the most frequent allergen recall, by the wrong label or package: every draft says so',
  source: 'S. M. Gendel, J. Zhu (2013), Journal of Food Protection 76: 1933',
  status: 'published',
  expected: 'milk-most-often-missed',
  got: () => declaredAllergens({ present: ['wheat'], region: 'eu' }).cautions.find((one) => one.startsWith('milk')),
})
