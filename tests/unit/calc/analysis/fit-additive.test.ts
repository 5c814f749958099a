import { expect, test } from 'vitest'
import { fitAdditive } from '@/lib/calc/analysis/fit-additive'

const rows = [
  { arm: 'a', block: '1', y: 10 },
  { arm: 'b', block: '1', y: 13 },
  { arm: 'c', block: '1', y: 11 },
  { arm: 'a', block: '2', y: 20 },
  { arm: 'b', block: '2', y: 22 },
  { arm: 'c', block: '2', y: 22 },
  { arm: 'a', block: '3', y: 15 },
  { arm: 'b', block: '3', y: 19 },
  { arm: 'c', block: '3', y: 15 },
]
const q = { rows, arms: ['a', 'b', 'c'], confidence: 0.95 }

test('adding the same to every value moves the means and nothing else', () => {
  const [one, two] = [fitAdditive(q), fitAdditive({ ...q, rows: rows.map((row) => ({ ...row, y: row.y + 1000 })) })]
  expect(two.residualSd).toBeCloseTo(one.residualSd, 12)
  expect(two.armMeans[1]!.estimate - one.armMeans[1]!.estimate).toBeCloseTo(1000, 10)
  expect(two.differences[0]!.estimate).toBeCloseTo(one.differences[0]!.estimate, 10)
})

test('a block effect, however large, leaves the differences alone', () => {
  const moved = fitAdditive({ ...q, rows: rows.map((row) => (row.block === '2' ? { ...row, y: row.y + 500 } : row)) })
  expect(moved.differences.map((d) => d.estimate)).toEqual(
    fitAdditive(q).differences.map((d) => expect.closeTo(d.estimate, 9)),
  )
})

test('residuals add up to zero in every arm and every block, and give the residual SD', () => {
  const { residuals, residualSd, residualDf } = fitAdditive(q)
  for (const name of ['a', 'b', 'c', '1', '2', '3']) {
    const own = residuals.filter((_, i) => rows[i]!.arm === name || rows[i]!.block === name)
    expect(own.reduce((sum, r) => sum + r, 0)).toBeCloseTo(0, 12)
  }
  expect(Math.sqrt(residuals.reduce((sum, r) => sum + r * r, 0) / residualDf)).toBeCloseTo(residualSd, 12)
})

test('the order of rows does not matter', () => {
  const [one, two] = [fitAdditive(q), fitAdditive({ ...q, rows: rows.toReversed() })]
  expect(two.anova.map((row) => row.sumSquares)).toEqual(one.anova.map((row) => expect.closeTo(row.sumSquares, 9)))
})

test('in complete blocks all differences have correlation one half', () => {
  expect(fitAdditive(q).differenceCorrelation[0]![1]).toBeCloseTo(0.5, 12)
})

test('what cannot be told is refused with its reason', () => {
  const confounded = [1, 2, 3, 4].flatMap((i) => [
    { arm: 'a', block: '1', y: i },
    { arm: 'b', block: '2', y: i * i },
  ])
  expect(() => fitAdditive({ rows: confounded, arms: ['a', 'b'], confidence: 0.95 })).toThrow(
    'arm-confounded-with-block',
  )
  const bare = [
    { arm: 'a', y: 1 },
    { arm: 'b', y: 2 },
  ]
  expect(() => fitAdditive({ rows: bare, arms: ['a', 'b'], confidence: 0.95 })).toThrow('no-residual-df')
  const flat = [1, 2, 3].flatMap(() => [
    { arm: 'a', y: 0.1 },
    { arm: 'b', y: 0.7 },
  ])
  expect(() => fitAdditive({ rows: flat, arms: ['a', 'b'], confidence: 0.95 })).toThrow('zero-variance')
  expect(() => fitAdditive({ rows: flat, arms: ['a'], confidence: 0.95 })).toThrow('one-arm')
  expect(() => fitAdditive({ rows, arms: ['a', 'b'], confidence: 0.95 })).toThrow('unknown-arm')
  expect(() => fitAdditive({ rows, arms: ['a', 'b', 'c', 'd'], confidence: 0.95 })).toThrow('arm-without-rows')
  expect(() => fitAdditive({ ...q, rows: [...rows, { arm: 'a', y: 3 }] })).toThrow('block-on-some-rows')
})
