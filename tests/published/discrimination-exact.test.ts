import { describe, expect, test } from 'vitest'
import { discriminationP } from '@/lib/calc/panel/discrimination-p'
import { discriminationPower } from '@/lib/calc/panel/discrimination-power'
import { leastCorrectTable } from '@/lib/calc/panel/least-correct-table'
import { tastersNeeded } from '@/lib/calc/panel/tasters-needed'
import type { DifferenceTest } from '@/lib/calc/panel/types'
import { publishedCheck } from '@/tests/support/published-check'
import cases from './data/discrimination-exact.json'

const SOURCE = 'exact binomial tails as fractions'

for (const { title, inputs, expected, ...one } of cases) {
  const kind = inputs.test as DifferenceTest
  const status = `computed with ${one.computedWith}; second route: ${one.checkedWith}`
  if (expected.p !== undefined) {
    publishedCheck({
      of: ['panel/discrimination-p'],
      what: `${title}, ${inputs.correct} of ${inputs.n}`,
      source: SOURCE,
      status,
      expected: expected.p,
      got: () => discriminationP({ test: kind, tasters: inputs.n!, correct: inputs.correct! }),
      tolerance: one.tolerance.rel,
      why: 'double precision',
    })
  }
  if (expected.rows !== undefined) {
    describe(title, () => {
      const alphas = inputs.alphas!
      const got = () => {
        const table = leastCorrectTable({ test: kind, fromTasters: inputs.n_from!, toTasters: inputs.n_to!, alphas })
        return expected.rows.map(([tasters]) => [
          tasters,
          ...table.filter((row) => row.tasters === tasters).map(({ correct }) => correct),
        ])
      }
      test('every row', () => {
        expect(got()).toEqual(expected.rows)
      })
      alphas.forEach((alpha, column) => {
        publishedCheck({
          of: ['panel/least-correct-table'],
          what: `${title}: sum of the counts at ${alpha}`,
          source: SOURCE,
          status,
          expected: expected.rows.reduce((sum, row) => sum + (row[column + 1] ?? 0), 0),
          got: () => got().reduce((sum, row) => sum + (row[column + 1] ?? 0), 0),
          tolerance: 0,
          why: 'counts; each row is compared beside',
        })
      })
    })
  }
  if (expected.power !== undefined) {
    const got = () =>
      discriminationPower({
        test: kind,
        tasters: inputs.n!,
        alpha: inputs.alpha!,
        effectKind: 'd-prime',
        effect: inputs.d_prime!,
      })
    const check = (what: string, value: number, of: () => number | null) =>
      publishedCheck({
        of: ['panel/discrimination-power'],
        what: `${title}: ${what}`,
        source: SOURCE,
        status,
        expected: value,
        got: () => of() ?? NaN,
        tolerance: one.tolerance.rel,
        why: 'double precision',
      })
    check('count needed', expected.critical_count, () => got().leastCorrect)
    check('chance by guessing', expected.actual_alpha, () => got().actualAlpha)
    check('share right', expected.proportion_correct, () => got().correctShare)
    check('power', expected.power, () => got().power)
  }
}

const powers = [
  [30, 0.6, 0.9029],
  [24, 0.6, 0.787],
  [60, 0.5, 0.8169],
] as const
for (const [tasters, effect, expected] of powers) {
  publishedCheck({
    id: 'P-9.7',
    of: ['panel/discrimination-power'],
    what: `triangle power, ${tasters} tasters, ${effect} right`,
    source: 'exact binomial',
    status: 'arithmetic',
    expected,
    got: () =>
      discriminationPower({ test: 'triangle', tasters, alpha: 0.05, effectKind: 'correct-share', effect }).power,
    tolerance: { absolute: 5e-5 },
    why: 'four decimals',
  })
}
publishedCheck({
  id: 'P-9.7',
  of: ['panel/tasters-needed'],
  what: 'triangle: the power of 30 tasters at 0.6 right is reached by none fewer',
  source: 'exact binomial',
  status: 'arithmetic',
  expected: 30,
  got: () =>
    tastersNeeded({ test: 'triangle', alpha: 0.05, power: 0.9029, effectKind: 'correct-share', effect: 0.6 }).tasters,
  tolerance: 0,
  why: 'a count',
})
