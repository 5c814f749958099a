import { dunnettAt, dunnettEntryOf, type DunnettPoint } from '@/tests/support/dunnett-points'
import { publishedCheck } from '@/tests/support/published-check'
import cases from './data/dunnett-distribution.json'

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
