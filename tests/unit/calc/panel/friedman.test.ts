import fc from 'fast-check'
import { expect, test } from 'vitest'
import { friedman } from '@/lib/calc/panel/friedman'
import { scoresOf } from '../../../support/panel-scores'

const table = fc
  .record({ n: fc.integer({ min: 2, max: 12 }), k: fc.integer({ min: 2, max: 6 }) })
  .chain(({ n, k }) =>
    fc.array(fc.array(fc.integer({ min: 1, max: 9 }), { minLength: k, maxLength: k }), { minLength: n, maxLength: n }),
  )
  .filter((rows) => rows.some((row) => new Set(row).size > 1))

test('only the order within each taster counts', () => {
  fc.assert(
    fc.property(
      table,
      fc.array(fc.double({ min: 0.1, max: 10, noNaN: true }), { minLength: 12, maxLength: 12 }),
      (rows, factors) => {
        const plain = friedman({ scores: scoresOf(rows), alpha: 0.05 })
        const stretched = rows.map((row, i) => row.map((score) => factors[i]! * score + i))
        expect(friedman({ scores: scoresOf(stretched), alpha: 0.05 })).toEqual(plain)
      },
    ),
  )
})

test('nothing is NaN, p is a chance, and sums of ranks add up', () => {
  fc.assert(
    fc.property(table, (rows) => {
      const found = friedman({ scores: scoresOf(rows), alpha: 0.05 })
      const [n, k] = [rows.length, rows[0]!.length]
      expect(found.rankSums.reduce((sum, { rankSum }) => sum + rankSum, 0)).toBe((n * k * (k + 1)) / 2)
      expect(found.chiSquared).toBeGreaterThanOrEqual(0)
      expect(found.chiSquared).toBeLessThanOrEqual(n * (k - 1) * (1 + 1e-12))
      expect(found.p).toBeGreaterThan(0)
      expect(found.p).toBeLessThanOrEqual(1)
      if (found.pOfF !== null) expect(found.pOfF).toBeLessThanOrEqual(1)
      expect(found.pairs).toHaveLength((k * (k - 1)) / 2)
    }),
  )
})

test('full agreement leaves F without a value', () => {
  expect(
    friedman({
      scores: scoresOf([
        [1, 2, 3],
        [1, 2, 3],
        [4, 5, 6],
      ]),
      alpha: 0.05,
    }),
  ).toMatchObject({
    chiSquared: expect.closeTo(6, 12),
    f: null,
    pOfF: null,
    warnings: ['full-agreement'],
  })
})

test('ties are named; tasters who tell nothing apart are refused', () => {
  expect(
    friedman({
      scores: scoresOf([
        [1, 1, 3],
        [1, 2, 3],
      ]),
      alpha: 0.05,
    }).warnings,
  ).toContain('ties')
  expect(() =>
    friedman({
      scores: scoresOf([
        [5, 5],
        [7, 7],
      ]),
      alpha: 0.05,
    }),
  ).toThrow('all-tied')
  expect(() =>
    friedman({
      scores: scoresOf([
        [5, 6],
        [7, 8],
      ]),
      alpha: 0,
    }),
  ).toThrow('alpha')
})

test('ten thousand scores are answered', () => {
  const rows = Array.from({ length: 2500 }, (_, i) => [i % 7, (i * 3) % 7, (i * 5) % 7, i % 6])
  const { p, pOfF } = friedman({ scores: scoresOf(rows), alpha: 0.05 })
  expect(p).toBeGreaterThan(0)
  expect(Math.abs(pOfF! - p)).toBeLessThan(0.01)
})
