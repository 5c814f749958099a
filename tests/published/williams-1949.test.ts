import { servingOrders } from '@/lib/calc/panel/serving-orders'
import { williamsSquare } from '@/lib/calc/squares/williams-square'
import { publishedCheck } from '@/tests/support/published-check'
import { squareCounts } from '@/tests/support/square-counts'

const WILLIAMS =
  'E. J. Williams, Australian Journal of Scientific Research A2, 1949; H. J. MacFie et al., Journal of Sensory Studies 4, 1989'

const four = [
  [1, 2, 4, 3],
  [2, 3, 1, 4],
  [3, 4, 2, 1],
  [4, 1, 3, 2],
]
four.forEach((row, i) => {
  publishedCheck({
    id: 'P-9.8',
    of: ['squares/williams-square'],
    what: `row ${i + 1} of the square for four, read as one number`,
    source: WILLIAMS,
    status: 'published principle, square worked',
    expected: Number(row.join('')),
    got: () => Number(williamsSquare({ treatments: 4 })[i]!.join('')),
    tolerance: 0,
    why: 'the square as printed',
  })
})

for (const [treatments, rows] of [
  [4, 4],
  [5, 10],
  [6, 6],
  [7, 14],
] as const) {
  publishedCheck({
    id: 'P-9.8',
    of: ['squares/williams-square'],
    what: `orders for ${treatments}: an odd number needs twice as many`,
    source: WILLIAMS,
    status: 'published principle',
    expected: rows,
    got: () => williamsSquare({ treatments }).length,
    tolerance: 0,
    why: 'a count',
  })
}

publishedCheck({
  id: 'P-9.8',
  of: ['panel/serving-orders'],
  what: 'eight tasters of four samples: each ordered pair twice, none more often',
  source: WILLIAMS,
  status: 'published principle',
  expected: 2,
  got: () => {
    const names = ['w', 'x', 'y', 'z']
    const samples = names.flatMap((sample) => ['1', '2'].map((batch) => ({ sample, batch, allergens: 'wheat' })))
    const { servings } = servingOrders({ seed: 'p', samples, tasters: 8 })
    const rows = Array.from({ length: 8 }, (_, i) =>
      servings.filter(({ taster }) => taster === i + 1).map(({ sample }) => names.indexOf(sample)),
    )
    const { after } = squareCounts(rows)
    return after.length === 1 ? after[0]! : NaN
  },
  tolerance: 0,
  why: 'a count',
})
