import fc from 'fast-check'
import { expect, test } from 'vitest'
import { kruskalWallis } from '@/lib/calc/comparison/kruskal-wallis'
import { armRows, expectRefusal, tenThousand } from '@/tests/support/arm-rows'

test('H changes neither with the order of values nor with anything that keeps their ranks', () => {
  fc.assert(
    fc.property(armRows, (rows) => {
      fc.pre(new Set(rows.map((row) => row.y)).size > 1)
      const { h } = kruskalWallis({ rows })
      expect(kruskalWallis({ rows: [...rows].reverse() }).h).toBeCloseTo(h, 9)
      expect(kruskalWallis({ rows: rows.map((row) => ({ ...row, y: Math.atan(row.y / 100) })) }).h).toBeCloseTo(h, 9)
      // turned upside down, ranks run the other way and H stays
      expect(kruskalWallis({ rows: rows.map((row) => ({ ...row, y: -row.y })) }).h).toBeCloseTo(h, 9)
    }),
  )
})
test('small arms are warned of', () => {
  const five = [1, 2, 3, 4, 5]
  const rows = [...five.map((y) => ({ arm: 'a', y })), ...five.map((y) => ({ arm: 'b', y: y + 2.5 }))]
  expect(kruskalWallis({ rows }).warnings).toEqual([])
  expect(kruskalWallis({ rows: rows.slice(1) }).warnings).toEqual(['small-arms'])
})
test('ten thousand values are no matter', () => expect(kruskalWallis({ rows: tenThousand(100) }).df).toBe(99))
test('identical values and a single arm are refused', () => {
  expectRefusal(
    () =>
      kruskalWallis({
        rows: [
          { arm: 'a', y: 1 },
          { arm: 'b', y: 1 },
        ],
      }),
    'not-possible',
    'zero-variance',
  )
  expectRefusal(
    () =>
      kruskalWallis({
        rows: [
          { arm: 'a', y: 1 },
          { arm: 'a', y: 2 },
        ],
      }),
    'not-possible',
    'one-arm',
  )
  expectRefusal(() => kruskalWallis({ rows: [] }), 'empty')
})
