import { controlBatches } from '@/lib/calc/plan/control-batches'
import { dunnettAt, dunnettEntryOf, type DunnettPoint } from '@/tests/support/dunnett-points'
import { checkDunnett } from '@/tests/support/dunnett-figures'
import { publishedCheck } from '@/tests/support/published-check'
import cases from './data/dunnett-distribution.json'
import examples from './data/dunnett-examples.json'

// C. W. Dunnett, JASA 50, 1955: its tables, its worked example (breaking strength of a fabric under three treatments), its
// allocation; from memory.

for (const { inputs, printed } of cases) {
  inputs.points.forEach((point: DunnettPoint, i) => {
    const expected = printed?.values_2dp[i]
    if (expected === undefined) return
    publishedCheck({
      of: [dunnettEntryOf(point)],
      what: `printed entry for ${JSON.stringify(point)}`,
      source: printed?.source ?? '',
      status: 'from memory',
      expected,
      got: () => dunnettAt(point),
      tolerance: { absolute: 0.0055 },
      why: 'printed with two decimals',
    })
  })
}

examples.filter(({ id }) => id.startsWith('fabric')).forEach(checkDunnett)

for (const [testArmCount, expected] of [
  [1, 1],
  [4, 2],
  [9, 3],
  [16, 4],
] as const) {
  publishedCheck({
    of: ['plan/control-batches'],
    what: `replicates of the control for each of ${testArmCount} treatments: √k`,
    source: 'C. W. Dunnett, JASA 50, 1955, allocation of observations',
    status: 'from memory',
    expected,
    got: () => controlBatches({ testArmCount, batchesPerArm: 3 }).suggested / 3,
    tolerance: { relative: 1e-12 },
    why: 'square numbers of treatments need no rounding',
  })
}
