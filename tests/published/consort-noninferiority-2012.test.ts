import { noWorseVerdict } from '@/lib/calc/analysis/no-worse-verdict'
import { publishedCheck } from '@/tests/support/published-check'

// In the figure the treatment is worse to the right and the margin stands at +1; here larger is better, so signs turn.
for (const [scenario, low, high, expected] of [
  ['A, wholly on the good side of zero', -1.4, -0.4, 'no-worse'],
  ['B, touching the good side and zero, within the margin', -0.9, 0.3, 'no-worse'],
  ['C, within the margin around zero', -0.4, 0.6, 'no-worse'],
  ['D, worse than zero, but wholly within the margin', 0.2, 0.9, 'no-worse'],
  ['E, over the margin and over zero', -0.3, 1.4, 'undecided'],
  ['F, worse than zero and over the margin', 0.3, 1.6, 'undecided'],
  ['H, wholly beyond the margin', 1.2, 2.1, 'worse'],
] as const) {
  publishedCheck({
    of: ['analysis/no-worse-verdict'],
    what: `scenario ${scenario}`,
    source: 'G. Piaggio et al., CONSORT statement on noninferiority and equivalence trials, JAMA 308, 2012, figure 1',
    status: 'from memory; ends of the intervals made up',
    expected,
    got: () =>
      noWorseVerdict({ estimate: -(low + high) / 2, low: -high, high: -low, margin: 1, goodDirection: 'larger' }),
  })
}
