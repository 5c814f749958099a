import { q10 } from '@/lib/calc/fermentation/q10'
import { publishedCheck } from '@/tests/support/published-check'

publishedCheck({
  id: 'P-7.5',
  of: ['fermentation/q10'],
  what: 'proof to one height, 270 min at 13 °C and 36 min at 57 °C of cabinet: times faster for ten °C',
  source: 'Freilich 1949, in K. Siffring and B. L. Bruinsma (1993), Cereal Chemistry 70: 351',
  status: 'published inputs; the factor is (270/36)^(10/44), worked by hand',
  expected: 1.5808,
  got: () => q10({ firstRate: 1 / 270, firstTempC: 13, secondRate: 1 / 36, secondTempC: 57 }),
  tolerance: { absolute: 5e-5 },
  why: 'half of the fourth decimal; far below 2.6 because the cabinet is not the dough',
})
