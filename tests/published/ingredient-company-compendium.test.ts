import { titratableAcidity } from '@/lib/calc/acidity/titratable-acidity'
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

const sours = 'Ingredient company, technical compendium, rye sours: pH and degree of acidity'
const sour = (endPointPh: number) =>
  titratableAcidity({ sampleMassG: 10, alkaliMl: 12.4, alkaliMolPerL: 0.1, endPointPh })
publishedCheck({
  of: ['acidity/titratable-acidity'],
  what: '10 g of sour, 12.4 mL of 0.1 mol/L to pH 8.5: degree of acidity is the mL',
  source: sours,
  status: 'published rule, reading made up',
  expected: 12.4,
  got: () => sour(8.5).acidityMlPer10g,
  tolerance: { relative: 1e-12 },
  why: 'the definition itself',
})
for (const [endPointPh, expected] of [
  [8.5, 'the degree'],
  [8.2, 'another figure'],
] as const) {
  publishedCheck({
    of: ['acidity/titratable-acidity'],
    what: `titrated to pH ${endPointPh}: is it the degree of acidity, whose end is pH 8.5`,
    source: sours,
    status: 'published',
    expected,
    got: () => (sour(endPointPh).warnings.includes('not-the-usual-end-point') ? 'another figure' : 'the degree'),
  })
}
