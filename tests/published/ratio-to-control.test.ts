import { expect, test } from 'vitest'
import { ratioToControl, type RatioMethod } from '@/lib/calc/comparison/ratio-to-control'
import { checkCase, type Figure } from '@/tests/support/published-case'
import cases from './data/ratio-to-control.json'

for (const c of cases) {
  const [control, treated] = [c.inputs.groups[0]!.values, c.inputs.groups[1]!.values]
  const method = c.inputs.method.replace('_', '-') as RatioMethod
  const got = () => ratioToControl({ method, control, treated, confidence: c.inputs.confidence })
  const e = c.expected
  checkCase(c, ['comparison/ratio-to-control'], 'double precision', [
    ['ratio', e.ratio, () => got().ratio],
    ['low', e.ci_lower, () => got().low!],
    ['high', e.ci_upper, () => got().high!],
    ['change in %', e.percent_change, () => got().pct],
    ['its low', e.percent_ci_lower, () => got().lowPct!],
    ['its high', e.percent_ci_upper, () => got().highPct!],
    ['df', e.df, () => got().df],
    ...(e.g === undefined ? [] : [['g', e.g, () => got().g!] satisfies Figure]),
    ...(e.se_log === undefined ? [] : [['standard error of the log', e.se_log, () => got().seLog!] satisfies Figure]),
  ])
  test(`${c.title}: bounded`, () => expect(got().bounded).toBe(true))
}
