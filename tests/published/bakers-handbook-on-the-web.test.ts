import { doughForTin } from '@/lib/calc/tin/dough-for-tin'
import { publishedCheck } from '@/tests/support/published-check'

const ML_PER_IN3 = 16.387064
const G_PER_OZ = 28.349523125
publishedCheck({
  id: 'Q-2.4',
  of: ['tin/dough-for-tin'],
  what: 'wholesale open-top bread at 7.6 in³ for an oz, tin of 120 in³, g',
  source: 'Bakers’ handbook reproduced on the web; inch and ounce of NIST Handbook 44, appendix C',
  status: 'published inputs',
  expected: 447.62,
  got: () => doughForTin({ tinVolumeMl: 120 * ML_PER_IN3, tinMlPerG: (7.6 * ML_PER_IN3) / G_PER_OZ }).doughMassG,
  tolerance: { absolute: 0.005 },
  why: 'half of the second decimal',
})
