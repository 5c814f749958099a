import { tTest, type TTestKind } from '@/lib/calc/comparison/t-test'
import { checkCase } from '@/tests/support/published-case'
import cases from './data/sleep-student-1908.json'

// Student (1908), The probable error of a mean: hours of sleep gained by ten people with two drugs.
for (const c of cases) {
  const [control, treated] = [c.inputs.groups[0]!.values, c.inputs.groups[1]!.values]
  const got = () => tTest({ kind: c.inputs.kind as TTestKind, control, treated, confidence: c.inputs.confidence })
  checkCase(c, ['comparison/t-test'], 'double precision', [
    ['difference', c.expected.difference, () => got().difference],
    ['standard error', c.expected.se, () => got().se],
    ['t', c.expected.t, () => got().t],
    ['df', c.expected.df, () => got().df],
    ['p', c.expected.p_two_sided, () => got().p, c.tolerance.fields.p_two_sided],
    ['low', c.expected.ci_lower, () => got().low],
    ['high', c.expected.ci_upper, () => got().high],
  ])
}
