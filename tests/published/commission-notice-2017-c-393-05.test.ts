import { ingredientQuantity } from '@/lib/calc/label/ingredient-quantity'
import { publishedCheck } from '@/tests/support/published-check'

publishedCheck({
  id: 'Q-8.7',
  of: ['label/ingredient-quantity'],
  what: 'butter of a biscuit: 50 g in 200 g of dough that bake to 170 g',
  source: 'Commission Notice 2017/C 393/05 on quantities of ingredients, example, as in a German trade extract',
  status: 'published',
  expected: 29.4,
  got: () => ingredientQuantity({ ingoingMassG: 50, finishedMassG: 170 }).quantityPct,
  tolerance: { absolute: 0.05 },
  why: 'given to the first decimal',
})
