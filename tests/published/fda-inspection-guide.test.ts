import { usServing } from '@/lib/calc/label/us-serving'
import { publishedCheck } from '@/tests/support/published-check'

const common = {
  id: 'Q-8.18',
  of: ['label/us-serving'] as const,
  source:
    'FDA inspection guide, attachment 6, with the row for bread of 21 CFR 101.12(b) as quoted from a law school’s copy',
  status: 'published',
  tolerance: { absolute: 0 },
  why: 'a count',
}
for (const [pieceG, least, most] of [
  [43, 1, 1],
  [28, 1, 2],
  [22, 2, 2],
] as const) {
  publishedCheck({
    ...common,
    what: `slice of ${pieceG} g: pieces, from`,
    expected: least,
    got: () => usServing({ pieceG, packageG: 454 }).leastPieces,
  })
  publishedCheck({
    ...common,
    what: `slice of ${pieceG} g: pieces, to`,
    expected: most,
    got: () => usServing({ pieceG, packageG: 454 }).mostPieces,
  })
}
publishedCheck({
  ...common,
  what: '454 g of slices of 43 g: servings',
  expected: 11,
  got: () => usServing({ pieceG: 43, packageG: 454 }).servings,
})
