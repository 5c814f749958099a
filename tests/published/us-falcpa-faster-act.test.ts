import { declaredAllergens } from '@/lib/calc/label/declared-allergens'
import { ingredientList } from '@/lib/calc/label/ingredient-list'
import type { LabelAllergen } from '@/lib/calc/label/read-ingredients'
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
  got: () =>
    us.notListed.filter((one) => ['wheat', 'spelt', 'khorasan-wheat', 'rye', 'barley', 'oats'].includes(one)).join(' '),
})

const notice = `${source}, in a law firm's notice`
const draft = (allergens: readonly LabelAllergen[]) =>
  ingredientList({
    lines: [...new Set(allergens.map(({ of }) => of))].map((name, i) => ({ name, massG: 100 - i })),
    parts: [],
    allergens,
    bakedMassG: 100,
    region: 'us',
  })
publishedCheck({
  id: 'Q-8.8',
  of: ['label/ingredient-list'],
  what: 'lecithin of soy, said in the list',
  source: notice,
  status: 'published',
  expected: 'lecithin (soy)',
  got: () =>
    draft([{ of: 'lecithin', allergen: 'soya' }])
      .entries.map(({ name, sourceInBrackets }) => `${name} (${sourceInBrackets})`)
      .join(''),
})
publishedCheck({
  id: 'Q-8.8',
  of: ['label/ingredient-list'],
  what: 'the sentence after the list with all nine, sesame with them: fish, shellfish and nuts by their kind',
  source: notice,
  status: 'published list, food invented',
  expected: 'Contains: milk, egg, anchovy, shrimp, almonds, wheat, peanuts, soy, sesame.',
  got: () =>
    draft([
      { of: 'tahini', allergen: 'sesame' },
      { of: 'lecithin', allergen: 'soya' },
      { of: 'peanuts', allergen: 'peanuts' },
      { of: 'flour', allergen: 'wheat' },
      { of: 'marzipan', allergen: 'almonds' },
      { of: 'paste', allergen: 'crustaceans', species: 'shrimp' },
      { of: 'sauce', allergen: 'fish', species: 'anchovy' },
      { of: 'glaze', allergen: 'egg' },
      { of: 'butter', allergen: 'milk' },
    ]).containsSentence ?? 'none',
})
publishedCheck({
  id: 'Q-8.8',
  of: ['label/ingredient-list'],
  what: 'allergens of a bread with each that is known: words of the sentence, eight nuts each by its own name',
  source: notice,
  status: 'published list, food invented',
  expected: 16,
  got: () =>
    (draft(ALLERGENS.map((allergen) => ({ of: allergen, allergen }))).containsSentence ?? '').split(',').length,
  tolerance: { absolute: 0 },
  why: 'a count: eight groups of one name and eight nuts',
})
