import { describe } from 'vitest'
import { type Alternative, adjustAgainstControl } from '@/lib/calc/analysis/adjust-against-control'
import { fitAdditive } from '@/lib/calc/analysis/fit-additive'
import { compareMixedModelArms } from '@/lib/calc/mixed-model/compare-mixed-model-arms'
import { fitMixedModel } from '@/lib/calc/mixed-model/fit-mixed-model'
import type cases from '@/tests/published/data/dunnett-examples.json'
import { publishedCheck } from './published-check'

const alternatives: Record<string, Alternative> = { 'two-sided': 'two-sided', greater: 'greater', less: 'less' }

/** Checks several arms against one control figure by figure. */
export function checkDunnett(c: (typeof cases)[number]): void {
  const compare = () => {
    const rows = c.inputs.groups.flatMap((group) => group.values.map((y) => ({ arm: group.name, y })))
    const fit = fitAdditive({ rows, arms: c.inputs.groups.map((group) => group.name), confidence: c.inputs.confidence })
    return adjustAgainstControl({
      differences: fit.differences,
      correlation: fit.differenceCorrelation,
      df: fit.residualDf,
      confidence: c.inputs.confidence,
      alternative: alternatives[c.inputs.alternative]!,
    })
  }
  const check = (what: string, expected: number, got: () => number, tolerance: number) =>
    publishedCheck({
      of: ['analysis/adjust-against-control', 'analysis/fit-additive'],
      what,
      source: c.source,
      status: `computed with ${c.computedWith}; second route: ${c.checkedWith}`,
      expected,
      got,
      tolerance,
      why: 'stated accuracy; the two routes agree to 2e-11',
    })
  describe(c.title, () => {
    check('critical value', c.expected.critical_value, () => compare().criticalValue, 1e-8)
    c.expected.comparisons.forEach((row, i) => {
      check(
        `${row.arm}: difference`,
        row.estimate,
        () => compare().comparisons[i]!.estimate,
        c.tolerance.fields.estimate,
      )
      check(`${row.arm}: standard error`, row.se, () => compare().comparisons[i]!.se, c.tolerance.fields.se)
      check(`${row.arm}: adjusted p`, row.p_adjusted, () => compare().comparisons[i]!.pAdjusted, 1e-8)
      if (row.ci_lower !== null)
        check(`${row.arm}: lower limit`, row.ci_lower, () => compare().comparisons[i]!.low!, c.tolerance.rel)
      if (row.ci_upper !== null)
        check(`${row.arm}: upper limit`, row.ci_upper, () => compare().comparisons[i]!.high!, c.tolerance.rel)
    })
  })
}

/** The same with each value as a batch of two pieces, a little above and below it: the batch is the unit, so the answer is the same. */
export function checkDunnettAsBatches(c: (typeof cases)[number]): void {
  const compare = () => {
    const rows = c.inputs.groups.flatMap((group) =>
      group.values.flatMap((value, i) =>
        [-0.5, 0.5].map((off) => ({ arm: group.name, factors: { batch: `${group.name} ${i}` }, y: value + off })),
      ),
    )
    const fit = fitMixedModel({ rows, model: { arms: c.inputs.groups.map((group) => group.name), random: ['batch'] } })
    return compareMixedModelArms({
      fit,
      dfMethod: 'kenward-roger',
      confidence: c.inputs.confidence,
      alternative: alternatives[c.inputs.alternative]!,
    })
  }
  const check = (what: string, expected: number, got: () => number, tolerance: number) =>
    publishedCheck({
      of: ['mixed-model/compare-mixed-model-arms'],
      what,
      source: c.source,
      status: `published inputs, each split in two pieces; computed with ${c.computedWith}; second route: ${c.checkedWith}`,
      expected,
      got,
      tolerance,
      why: 'the accuracy stated by the two routes',
    })
  describe(`${c.title}, as batches`, () => {
    check('degrees of freedom', c.expected.df, () => compare().df, 1e-9)
    check('critical value', c.expected.critical_value, () => compare().criticalValue, c.tolerance.rel)
    c.expected.comparisons.forEach((row, i) =>
      check(`${row.arm}: adjusted p`, row.p_adjusted, () => compare().comparisons[i]!.pAdjusted, c.tolerance.rel),
    )
  })
}
