import fc from 'fast-check'
import { expect, test } from 'vitest'
import { ancova } from '@/lib/calc/comparison/ancova'
import { expectRefusal, moved, reading, tenThousand } from '@/tests/support/arm-rows'

/** Three arms of four; x runs apart from arms and blocks. */
const xs = [1, 4, 2, 7, 3, 5, 8, 2, 6, 1, 4, 7]
const rowsOf = fc
  .array(reading, { minLength: 12, maxLength: 12 })
  .map((values) => values.map((y, i) => ({ arm: 'abc'.charAt(i % 3), block: `day ${i % 4}`, x: xs[i]!, y })))
const q = { control: 'a', confidence: 0.95 }

test('moving y or x moves nothing but means; a slope added to y is found in the slope alone', () => {
  fc.assert(
    fc.property(rowsOf, reading, fc.boolean(), (blocked, by, inBlocks) => {
      const rows = inBlocks ? blocked : blocked.map(({ arm, x, y }) => ({ arm, x, y }))
      const got = ancova({ rows, ...q })
      const there = ancova({
        rows: moved(rows, by, 1).map((row) => ({ ...row, x: row.x + 100, y: row.y + 3 * row.x })),
        ...q,
      })
      expect(there.slope.estimate).toBeCloseTo(got.slope.estimate + 3, 6)
      expect(there.covariateMean).toBeCloseTo(got.covariateMean + 100, 9)
      got.differences.forEach((difference, i) => {
        expect(there.differences[i]!.estimate).toBeCloseTo(difference.estimate, 6)
        expect(there.differences[i]!.se).toBeCloseTo(difference.se, 6)
      })
      expect(there.adjustedMeans[0]!.estimate).toBeCloseTo(
        got.adjustedMeans[0]!.estimate + by + 3 * got.covariateMean,
        5,
      )
    }),
  )
})
test('differences are those of the adjusted means, whatever the order of rows', () => {
  fc.assert(
    fc.property(rowsOf, (rows) => {
      const { adjustedMeans, differences } = ancova({ rows, ...q })
      differences.forEach(({ estimate }, i) =>
        expect(estimate).toBeCloseTo(adjustedMeans[i + 1]!.estimate - adjustedMeans[0]!.estimate, 7),
      )
      const turned = ancova({ rows: [...rows].reverse(), ...q }).differences
      for (const { arm, t } of differences) expect(turned.find((row) => row.arm === arm)!.t).toBeCloseTo(t, 6)
    }),
  )
})
test('an arm that never met the mean condition is warned of', () => {
  const rows = [1, 2, 3, 11, 12, 13].map((x, i) => ({ arm: i < 3 ? 'a' : 'b', x, y: [5, 7, 6, 9, 8, 12][i]! }))
  expect(ancova({ rows, ...q }).warnings).toContain('beyond-covariate')
  expect(ancova({ rows: rows.map((row, i) => ({ ...row, x: (i * 5) % 7 })), ...q }).warnings).toEqual([])
})
test('where slopes cannot be told apart the test of them is left out, and that is said', () => {
  const rows = [
    ['a', 1, 4],
    ['a', 2, 6],
    ['a', 3, 7],
    ['b', 2, 9],
  ].map(([arm, x, y]) => ({ arm: arm as string, x: x as number, y: y as number }))
  expect(ancova({ rows, ...q })).toMatchObject({ interactionTest: null, residualDf: 1 })
  const more = [...rows, { arm: 'b', x: 2, y: 8 }, { arm: 'a', x: 5, y: 8 }]
  expect(ancova({ rows: more, ...q }).warnings).toContain('no-interaction-test')
})
test('ten thousand values, in thousands of blocks too', () => {
  const rows = tenThousand(4).map((row, i) => ({ ...row, x: Math.cos(i), block: String(Math.floor(i / 4)) }))
  expect(ancova({ rows, control: 'arm 0', confidence: 0.95 }).residualDf).toBe(10_000 - 2500 - 3 - 1)
  const many = tenThousand(21).map((row, i) => ({ ...row, x: Math.cos(i) }))
  expectRefusal(() => ancova({ rows: many, control: 'arm 0', confidence: 0.95 }), 'out-of-range')
})
test('what cannot be told apart is refused by its name', () => {
  const row = (arm: string, block: string, x: number, y: number) => ({ arm, block, x, y })
  const rows = [
    row('a', '1', 1, 4),
    row('b', '1', 2, 9),
    row('a', '2', 3, 5),
    row('b', '2', 5, 7),
    row('a', '3', 2, 6),
    row('b', '3', 7, 8),
  ]
  expectRefusal(
    () => ancova({ rows: rows.map((r) => ({ ...r, x: 26.1 })), ...q }),
    'not-possible',
    'covariate-confounded',
  )
  expectRefusal(
    () => ancova({ rows: rows.map((r) => ({ ...r, x: r.arm === 'a' ? 0.1 : 0.3 })), ...q }),
    'not-possible',
    'covariate-confounded',
  )
  expectRefusal(
    () => ancova({ rows: rows.map((r) => ({ ...r, block: r.arm })), ...q }),
    'not-possible',
    'arm-confounded-with-block',
  )
  expectRefusal(() => ancova({ rows: rows.slice(0, 4), ...q }), 'not-possible', 'no-residual-df')
  expectRefusal(() => ancova({ rows: moved(rows, 3, 0), ...q }), 'not-possible', 'zero-variance')
  expectRefusal(() => ancova({ rows, control: 'z', confidence: 0.95 }), 'wrong-shape', 'unknown-arm')
  expectRefusal(() => ancova({ rows: rows.map((r, i) => (i ? r : { ...r, x: NaN })), ...q }), 'not-finite')
  expectRefusal(
    () => ancova({ rows: rows.map((r, i) => (i ? r : { arm: r.arm, x: r.x, y: r.y })), ...q }),
    'wrong-shape',
    'block-on-some-rows',
  )
})
