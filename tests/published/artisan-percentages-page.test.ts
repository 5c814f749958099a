import { massesFromPercentages } from '@/lib/calc/formula/masses-from-percentages'
import { publishedCheck } from '@/tests/support/published-check'

const source = 'Artisan bakery teaching page on percentages, web'
const scaled = massesFromPercentages({
  lines: [
    { id: 'flour', pctFlour: 100, isFlour: true },
    { id: 'water', pctFlour: 65, isFlour: false },
    { id: 'salt', pctFlour: 2, isFlour: false },
    { id: 'yeast', pctFlour: 2, isFlour: false },
  ],
  target: { by: 'dough-mass', doughMassG: 3 },
})

publishedCheck({
  id: 'P-1.3',
  of: ['formula/masses-from-percentages'],
  what: 'flour for 3 lb of dough at 169 %',
  source,
  status: 'published',
  expected: 1.7751,
  got: () => scaled.flourMassG,
  tolerance: { absolute: 5e-5 },
  why: 'worked to four decimals; the source prints 1.77, cut off',
})
publishedCheck({
  id: 'P-1.3',
  of: ['formula/masses-from-percentages'],
  what: 'water from the unrounded flour, not 0.65 x 1.77 = 1.1505',
  source,
  status: 'published',
  expected: 1.1538,
  got: () => scaled.lines[1]?.massG ?? Number.NaN,
  tolerance: { absolute: 5e-5 },
  why: 'a rounded flour mass must never feed a later line',
})
