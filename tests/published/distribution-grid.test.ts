import { expect, test } from 'vitest'
import { chiSquaredQuantile } from '@/lib/calc/distributions/chi-squared-quantile'
import { chiSquaredTail } from '@/lib/calc/distributions/chi-squared-tail'
import { fQuantile } from '@/lib/calc/distributions/f-quantile'
import { fTail } from '@/lib/calc/distributions/f-tail'
import { logGamma } from '@/lib/calc/distributions/log-gamma'
import { normalQuantile } from '@/lib/calc/distributions/normal-quantile'
import { normalTail } from '@/lib/calc/distributions/normal-tail'
import { tQuantile } from '@/lib/calc/distributions/t-quantile'
import { tTail } from '@/lib/calc/distributions/t-tail'
import rows from './data/distribution-grid.json'

// Source: mpmath 1.3.0 with 50 digits, data/distribution-grid.py. Tolerances: inside the 1e-10 that is promised.
const TAIL = 1e-12
const QUANTILE = 1e-10

type Row = { name: string; x: number; df1?: number; df2?: number; value: number }
const all: Row[] = rows

/** Rows that miss the tolerance, each with its relative difference. */
function misses(name: string, tolerance: number, got: (row: Row) => number, expected = (row: Row) => row.value) {
  const chosen = all.filter((row) => row.name === name)
  expect(chosen.length).toBeGreaterThan(9)
  return chosen
    .map((row) => ({ ...row, got: got(row), difference: Math.abs(got(row) / expected(row) - 1) }))
    .filter((row) => !(row.difference <= tolerance))
}

// a probability near 1, or near ½ for t, does not determine the quantile to ten digits
const unlessFlat = (row: Row, most: number, back: (p: number) => number) => (row.value < most ? back(row.value) : row.x)

test('normal upper tail and quantile', () => {
  expect(misses('normal', TAIL, (r) => normalTail({ z: r.x, tail: 'upper' }))).toEqual([])
  expect(misses('normal', TAIL, (r) => normalTail({ z: -r.x, tail: 'lower' }))).toEqual([])
  expect(
    misses(
      'normal',
      QUANTILE,
      (r) => normalQuantile({ p: r.value, tail: 'upper' }),
      (r) => r.x,
    ),
  ).toEqual([])
})

test("Student's t upper tail and quantile", () => {
  expect(misses('t', TAIL, (r) => tTail({ t: r.x, df: r.df1!, tail: 'upper' }))).toEqual([])
  expect(
    misses(
      't',
      TAIL,
      (r) => tTail({ t: r.x, df: r.df1!, tail: 'lower' }),
      (r) => 1 - r.value,
    ),
  ).toEqual([])
  const back = (r: Row) => unlessFlat(r, 0.49, (p) => tQuantile({ p, df: r.df1!, tail: 'upper' }))
  expect(misses('t', QUANTILE, back, (r) => r.x)).toEqual([])
})

test('chi-squared upper tail and quantile', () => {
  expect(misses('chiSquared', TAIL, (r) => chiSquaredTail({ x: r.x, df: r.df1!, tail: 'upper' }))).toEqual([])
  const back = (r: Row) => unlessFlat(r, 0.99, (p) => chiSquaredQuantile({ p, df: r.df1!, tail: 'upper' }))
  expect(misses('chiSquared', QUANTILE, back, (r) => r.x)).toEqual([])
})

test('F upper tail and quantile', () => {
  expect(misses('f', TAIL, (r) => fTail({ f: r.x, df1: r.df1!, df2: r.df2!, tail: 'upper' }))).toEqual([])
  const back = (r: Row) => unlessFlat(r, 0.99, (p) => fQuantile({ p, df1: r.df1!, df2: r.df2!, tail: 'upper' }))
  expect(misses('f', QUANTILE, back, (r) => r.x)).toEqual([])
})

test('ln Γ, relative, and absolute near its zeros at 1 and 2', () => {
  const shifted = (v: number) => v + Math.sign(v)
  expect(
    misses(
      'logGamma',
      2e-14,
      (r) => shifted(logGamma(r.x)),
      (r) => shifted(r.value),
    ),
  ).toEqual([])
})
