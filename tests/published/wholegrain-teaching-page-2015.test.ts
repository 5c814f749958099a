import { fromTinThatWorks } from '@/lib/calc/tin/from-tin-that-works'
import { publishedCheck } from '@/tests/support/published-check'

const ML_PER_IN3 = 16.387064
const found = () =>
  fromTinThatWorks({ tinVolumeMl: 8 * 3.5 * 3 * ML_PER_IN3, doughMassG: 450, newTinVolumeMl: 9 * 4 * 4 * ML_PER_IN3 })
for (const [what, expected, got, absolute] of [
  ['8 × 3.5 × 3 in with 450 g: g for an in³ (printed 5.35)', 5.3571, () => ML_PER_IN3 / found().tinMlPerG, 5e-5],
  ['new tin of 9 × 4 × 4 in over it (printed 1.71)', 1.71429, () => found().factor, 5e-6],
  ['dough for the new tin, g (printed 770)', 771.43, () => found().newDoughMassG, 5e-3],
] as const) {
  publishedCheck({
    id: 'Q-2.5',
    of: ['tin/from-tin-that-works'],
    what,
    source: 'Wholegrain teaching page, 2015',
    status: 'published',
    expected,
    got,
    tolerance: { absolute },
    why: 'half of the last digit worked out; the page carries a rounded ratio on',
  })
}
