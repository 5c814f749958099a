import { type SplitPlot, splitPlot } from '@/lib/calc/analysis/split-plot'
import { publishedCheck } from './published-check'

export type SplitPlotCase = {
  source: string
  computedWith: string
  checkedWith: string
  tolerance: { rel: number }
  expected: Record<string, number>
}

/** Checks a split-plot table figure by figure; the names of the expected figures are those of the fixture. */
export function checkSplitPlot(c: SplitPlotCase, q: Parameters<typeof splitPlot>[0]): void {
  const names = ['block', 'arm', 'whole_error', 'sub', 'arm_sub', 'sub_error'] as const
  const row = (name: (typeof names)[number]): SplitPlot['anova'][number] => splitPlot(q).anova[names.indexOf(name)]!
  for (const name of names) {
    const figures: [string, () => number | null][] = [
      [`df_${name}`, () => row(name).df],
      [`ss_${name}`, () => row(name).sumSquares],
      [`F_${name}`, () => row(name).f],
      [`p_${name}`, () => row(name).p],
    ]
    for (const [what, got] of figures) {
      const expected = c.expected[what]
      if (expected === undefined) continue
      publishedCheck({
        of: ['analysis/split-plot'],
        what,
        source: c.source,
        status: `computed with ${c.computedWith}; second route: ${c.checkedWith}`,
        expected,
        got: () => got() ?? NaN,
        tolerance: c.tolerance.rel,
        why: 'double precision with room for another order of summing',
      })
    }
  }
}
