import { expect, test } from 'vitest'
import { declaredAllergens } from '@/lib/calc/label/declared-allergens'
import { labelWords } from '@/lib/words/en/calculators/label'

test('P-12.5 undeclared milk in bakery goods is the most frequent allergen recall, by the wrong label or package (S. M. Gendel, J. Zhu (2013), Journal of Food Protection 76: 1933; published): every draft says so', () => {
  expect(declaredAllergens({ present: ['wheat'], region: 'eu' }).cautions).toContain('milk-most-often-missed')
  expect(labelWords.choices['milk-most-often-missed']).toMatch(/milk.*label/)
})
