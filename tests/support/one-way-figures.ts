import { fitAdditive } from '@/lib/calc/analysis/fit-additive'
import { oneWayAnova } from '@/lib/calc/comparison/one-way-anova'
import type cases from '@/tests/published/data/oneway-r-data-sets.json'
import { checkCase, type Figure, type PublishedCase } from './published-case'

/** Checks a one-way analysis of variance figure by figure. */
export function checkOneWay(c: (typeof cases)[number]): void {
  const arms = c.inputs.groups.map((group) => group.name)
  const fit = () =>
    fitAdditive({
      rows: c.inputs.groups.flatMap((group) => group.values.map((y) => ({ arm: group.name, y }))),
      arms,
      confidence: 0.95,
    })
  const figures: Figure[] = [
    ['sum of squares between', c.expected.ss_between, () => fit().anova[0]!.sumSquares],
    ['sum of squares within', c.expected.ss_within, () => fit().anova[1]!.sumSquares],
    ['F', c.expected.F, () => fit().anova[0]!.f!],
    ['p', c.expected.p, () => fit().anova[0]!.p!, c.tolerance.fields.p],
    ['residual SD', c.expected.residual_sd, () => fit().residualSd],
    ...c.expected.means.map((mean, i): Figure => [`mean of ${arms[i]}`, mean, () => fit().armMeans[i]!.estimate]),
  ]
  checkCase(c, ['analysis/fit-additive'], 'double precision with room for another order of summing', figures)

  checkOneWayAnova(c, 'double precision with room for another order of summing', [
    ['df between', c.expected.df_between, (got) => got.df1],
    ['df within', c.expected.df_within, (got) => got.df2],
  ])
}

type OneWayCase = PublishedCase & {
  inputs: { groups: readonly { name: string; values: readonly number[] }[] }
  expected: Record<
    'ss_between' | 'ss_within' | 'ms_between' | 'ms_within' | 'F' | 'p' | 'r_squared' | 'residual_sd' | 'grand_mean',
    number
  > & { means: readonly number[] }
  tolerance: { rel: number; fields: { p: number } }
}

/** Checks the one-way analysis of variance as it is public, with what else a case has beside the usual figures. */
export function checkOneWayAnova(
  c: OneWayCase,
  why: string,
  more: readonly [what: string, expected: number, got: (anova: ReturnType<typeof oneWayAnova>) => number][] = [],
): void {
  const rows = c.inputs.groups.flatMap((group) => group.values.map((y) => ({ arm: group.name, y })))
  const got = () => oneWayAnova({ rows, confidence: 0.95 })
  const e = c.expected
  checkCase(c, ['comparison/one-way-anova'], why, [
    ...more.map(([what, expected, figure]): Figure => [what, expected, () => figure(got())]),
    ['sum of squares between', e.ss_between, () => got().sumSquaresBetween],
    ['sum of squares within', e.ss_within, () => got().sumSquaresWithin],
    ['mean square between', e.ms_between, () => got().meanSquareBetween],
    ['mean square within', e.ms_within, () => got().meanSquareWithin],
    ['F', e.F, () => got().f],
    ['p', e.p, () => got().p, c.tolerance.fields.p],
    ['share explained', e.r_squared, () => got().explainedShare],
    ['residual SD', e.residual_sd, () => got().residualSd],
    ['mean of all', e.grand_mean, () => got().grandMean],
    ...e.means.map((mean, i): Figure => [`mean of ${c.inputs.groups[i]!.name}`, mean, () => got().arms[i]!.mean]),
  ])
}
