import { agreeReadings } from '@/lib/calc/loaf/agree-readings'
import { publishedCheck } from '@/tests/support/published-check'

const source = 'ISO 5725-6:1994, 5.2.2 and table 1: critical range factors 2.8 for two and 3.3 for three results'
const status = 'from memory; readings made up'

for (const [readings, expected] of [
  [[100, 102.8], 2.8],
  [[100, 103.5, 101], 3.3],
] as const) {
  publishedCheck({
    of: ['loaf/agree-readings'],
    what: `critical range of ${readings.length} readings at a repeatability standard deviation of 1`,
    source,
    status,
    expected,
    got: () => agreeReadings({ readings, repeatabilityLimit: 2.8 }).criticalRange,
    tolerance: { relative: 1e-12 },
    why: 'the factors are printed with two digits and taken as they are',
  })
}
for (const [readings, expected] of [
  [[100, 102.8], 'mean'],
  [[100, 102.9], 'needs-another'],
  [[100, 103.2, 101], 'mean'],
  [[100, 103.4, 101], 'median'],
] as const) {
  publishedCheck({
    of: ['loaf/agree-readings'],
    what: `what is reported for ${readings.join(', ')}`,
    source,
    status,
    expected,
    got: () => agreeReadings({ readings, repeatabilityLimit: 2.8 }).outcome,
  })
}
