import fc from 'fast-check'
import { expect, test } from 'vitest'
import { dot, orthonormalBasis, solveTriangle } from '@/lib/calc/arms/orthonormal-basis'
import { forLong } from '@/tests/support/long'

const vectors = fc
  .tuple(fc.integer({ min: 1, max: 7 }), fc.integer({ min: 1, max: 20 }))
  .chain(([m, n]) =>
    fc.array(fc.array(fc.integer({ min: -9, max: 9 }), { minLength: n, maxLength: n }), { minLength: m, maxLength: m }),
  )

test('the basis is orthonormal and rebuilds the vectors picked', () => {
  fc.assert(
    fc.property(vectors, (rows) => {
      const { basis, picked, triangle } = orthonormalBasis(rows)
      basis.forEach((a, i) => basis.forEach((b, j) => expect(dot(a, b)).toBeCloseTo(i === j ? 1 : 0, 12)))
      picked.forEach((row, c) => {
        const rebuilt = (rows[row] ?? []).map((_, k) =>
          basis.reduce((s, unit, r) => s + (triangle[r]?.[c] ?? 0) * (unit[k] ?? 0), 0),
        )
        rebuilt.forEach((value, k) => expect(value).toBeCloseTo(rows[row]?.[k] ?? 0, 9))
      })
    }),
    { seed: 1710, numRuns: forLong(300, 6_000) },
  )
})

test('every vector lies in the span, and dependent ones are not picked', () => {
  fc.assert(
    fc.property(vectors, (rows) => {
      const doubled = [...rows, ...rows.map((row) => row.map((v) => 3 * v))]
      const { basis, picked } = orthonormalBasis(doubled)
      expect(picked.length).toBeLessThanOrEqual(rows.length)
      for (const row of doubled) {
        const inside = row.map((_, k) => basis.reduce((s, unit) => s + dot(unit, row) * (unit[k] ?? 0), 0))
        row.forEach((value, k) => expect(inside[k]).toBeCloseTo(value, 8))
      }
    }),
    { seed: 1711, numRuns: forLong(300, 6_000) },
  )
})

test('back substitution', () => {
  const z = solveTriangle(
    [
      [2, 1],
      [0, 4],
    ],
    [4, 8],
  )
  expect(z).toEqual([1, 2])
})
