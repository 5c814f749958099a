import fc from 'fast-check'
import { expect, test } from 'vitest'
import { repeatability } from '@/lib/calc/comparison/repeatability'
import { armRows, eachArmVaries, expectRefusal, moved, tenThousand } from '@/tests/support/arm-rows'

const batches = armRows.filter(eachArmVaries).map((rows) => rows.map(({ arm, y }) => ({ batch: arm, y })))

test('moving values changes no spread, stretching stretches it', () => {
  fc.assert(
    fc.property(batches, (rows) => {
      const got = repeatability({ rows, confidence: 0.95 })
      const other = repeatability({ rows: moved(rows, 64, -4), confidence: 0.95 })
      expect(other.repeatabilitySd).toBeCloseTo(4 * got.repeatabilitySd, 6)
      expect(other.intermediateSd).toBeCloseTo(4 * got.intermediateSd, 5)
      expect(other.betweenHeldAtZero).toBe(got.betweenHeldAtZero)
      expect(got.intermediateSd).toBeGreaterThanOrEqual(got.repeatabilitySd)
      expect(got.low).toBeLessThan(got.repeatabilitySd)
      expect(got.high).toBeGreaterThan(got.repeatabilitySd)
    }),
  )
})
test('spread of the mean in % needs means above zero', () => {
  const rows = [10, 12, 11, 15].map((y, i) => ({ batch: String(i % 2), y }))
  expect(repeatability({ rows, confidence: 0.95 }).pooledCvPct).toBeGreaterThan(0)
  expect(repeatability({ rows: moved(rows, -20, 1), confidence: 0.95 })).toMatchObject({
    pooledCvPct: null,
    repeatabilityCvPct: null,
    intermediateCvPct: null,
  })
})
test('ten thousand values are no matter', () =>
  expect(
    repeatability({ rows: tenThousand(50).map(({ arm, y }) => ({ batch: arm, y })), confidence: 0.95 })
      .effectiveBatchSize,
  ).toBeCloseTo(200, 9))
test('one batch, one loaf in each and identical values are refused', () => {
  const of = (list: number[][]) => () =>
    repeatability({ rows: list.flatMap((ys, i) => ys.map((y) => ({ batch: String(i), y }))), confidence: 0.95 })
  expectRefusal(of([]), 'empty')
  expectRefusal(of([[1, 2, 3]]), 'empty')
  expectRefusal(of([[1], [2], [3]]), 'not-possible', 'one-loaf-per-batch')
  expectRefusal(
    of([
      [0.1, 0.1, 0.1],
      [0.7, 0.7, 0.7],
    ]),
    'not-possible',
    'zero-variance',
  )
  expectRefusal(
    of([
      [1, NaN],
      [2, 3],
    ]),
    'not-finite',
  )
})
