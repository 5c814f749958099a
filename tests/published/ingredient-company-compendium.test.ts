import { displacedVolumeMl } from '@/lib/calc/loaf/displaced-volume'
import { summariseReadings } from '@/lib/calc/loaf/summarise-readings'
import { publishedCheck } from '@/tests/support/published-check'

publishedCheck({
  id: 'P-6.2',
  of: ['loaf/displaced-volume'],
  what: 'V2 210 mL less V1 150 mL',
  source: 'Ingredient company, technical compendium, seed displacement',
  status: 'published',
  expected: 60,
  got: () => displacedVolumeMl({ withLoafMl: 210, withoutLoafMl: 150, offsetMl: 0 }),
  tolerance: { relative: 1e-12 },
  why: 'exact arithmetic',
})
publishedCheck({
  id: 'P-6.2',
  of: ['loaf/summarise-readings'],
  what: 'the figure reported is the mean of three readings',
  source: 'Ingredient company, technical compendium, seed displacement (rule; readings made up)',
  status: 'published inputs',
  expected: 60,
  got: () => summariseReadings([58, 60, 62]).mean,
  tolerance: { relative: 1e-12 },
  why: 'exact arithmetic',
})
