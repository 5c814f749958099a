import { displacedVolumeMl } from '@/lib/calc/loaf/displaced-volume'
import { publishedCheck } from '@/tests/support/published-check'

publishedCheck({
  id: 'P-6.3',
  of: ['loaf/displaced-volume'],
  what: '400 mL of extra seed under a small loaf is taken off: 1150 mL read',
  source: 'Oregon State University, method page of the volumeter (rule; reading made up)',
  status: 'published inputs',
  expected: 750,
  got: () => displacedVolumeMl({ withLoafMl: 1150, withoutLoafMl: 0, offsetMl: 400 }),
  tolerance: { relative: 1e-12 },
  why: 'exact arithmetic',
})
