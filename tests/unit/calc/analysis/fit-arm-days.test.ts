import { expect, test } from 'vitest'
import { countArmDays, type DoughRow } from '@/lib/calc/analysis/count-arm-days'
import { fitAdditive } from '@/lib/calc/analysis/fit-additive'
import { type ErrorUnit, fitArmDays } from '@/lib/calc/analysis/fit-arm-days'

const arms = ['control', 'b', 'c']
const days = ['Mon', 'Tue', 'Thu', 'Fri']
const y = (arm: string, day: string, copy: number) =>
  2500 +
  40 * arms.indexOf(arm) +
  25 * days.indexOf(day) ** 2 +
  ((arm.charCodeAt(0) * day.charCodeAt(1)) % 37) +
  9 * copy
const doughs = (count: (arm: string) => number): DoughRow[] =>
  days.flatMap((block) =>
    arms.flatMap((arm) => Array.from({ length: count(arm) }, (_, copy) => ({ arm, block, y: y(arm, block, copy) }))),
  )
const fit = (rows: readonly DoughRow[], unit: ErrorUnit = 'arm-days') =>
  fitArmDays(countArmDays({ rows, arms }), { unit })

test('with equally many doughs the weights change nothing: it is the unweighted fit of arm-day means', () => {
  const rows = doughs(() => 2)
  const cells = countArmDays({ rows, arms }).cells.map(({ arm, block, mean }) => ({ arm, block, y: mean }))
  const plain = fitAdditive({ rows: cells, arms, confidence: 0.95 })
  const weighted = fit(rows)
  expect(weighted.df).toBe(plain.residualDf)
  expect(weighted.meanSquare! / 2).toBeCloseTo(plain.residualSd ** 2, 8)
  expect(weighted.differences).toEqual(plain.differences.map(({ estimate }) => expect.closeTo(estimate, 8)))
  weighted.differences.forEach((_, i) =>
    expect(Math.sqrt(weighted.meanSquare! * weighted.differenceCovariance[i]![i]!)).toBeCloseTo(
      plain.differences[i]!.se,
      8,
    ),
  )
})

test('with the error taken from doughs it is the fit of doughs', () => {
  const rows = doughs((arm) => (arm === 'control' ? 3 : 2)).slice(1)
  const plain = fitAdditive({ rows: rows.map((row) => ({ ...row, y: row.y! })), arms, confidence: 0.95 })
  const found = fit(rows, 'doughs')
  expect(found.df).toBe(plain.residualDf)
  expect(Math.sqrt(found.meanSquare!)).toBeCloseTo(plain.residualSd, 8)
  expect(found.means).toEqual(plain.armMeans.map(({ estimate }) => expect.closeTo(estimate, 7)))
})

test('an arm-day mean of more doughs weighs more: a control of three a day has a third of the variance', () => {
  const { meanCovariance } = fit(doughs((arm) => (arm === 'control' ? 3 : 1)))
  expect(meanCovariance[0]![0]).toBeCloseTo(1 / 12, 12)
  expect(meanCovariance[1]![1]).toBeCloseTo(1 / 4, 12)
  expect(meanCovariance[0]![1]).toBeCloseTo(0, 12)
})

test('one day has no error by arm-day means, and figures that fit without error have none', () => {
  const monday = doughs(() => 3).filter(({ block }) => block === 'Mon')
  expect(fit(monday)).toMatchObject({ df: 0, meanSquare: null, noInterval: 'no-residual-df' })
  expect(fit(monday, 'doughs')).toMatchObject({ df: 6, noInterval: null })
  const exact = days.flatMap((block, i) => arms.map((arm, j) => ({ arm, block, y: 2500.1 + 13.7 * i + 0.3 * j })))
  expect(fit(exact)).toMatchObject({ df: 6, meanSquare: 0, noInterval: 'zero-variance' })
})

test('more than can be worked out is refused', () => {
  const rows = Array.from({ length: 2000 }, (_, i) => [
    { arm: 'control', block: String(i), y: i },
    { arm: 'b', block: String(i), y: i + 1 },
  ]).flat()
  expect(() => fit(rows)).toThrow('too-large')
})
