import { expect, test } from 'vitest'
import { batchesPower } from '@/lib/calc/plan/batches-power'

const q = {
  batchesPerArm: 4,
  loavesPerBatch: 3,
  batchSd: 40,
  loafSd: 30,
  difference: 100,
  alpha: 0.05,
  alternative: 'two-sided',
} as const

test('loaves add no degrees of freedom, and cannot do away with the spread of batches', () => {
  const power = (change: Partial<typeof q> | { loavesPerBatch: number }) => batchesPower({ ...q, ...change })
  expect(power({ loavesPerBatch: 30 }).df).toBe(power({}).df)
  expect(power({ loavesPerBatch: 10_000 }).power).toBeLessThan(batchesPower({ ...q, batchesPerArm: 8 }).power)
  expect(power({ loavesPerBatch: 30 }).power).toBeGreaterThan(power({}).power)
})

test.each([
  ['batchesPerArm', { batchesPerArm: 1 }, 'out-of-range'],
  ['loavesPerBatch', { loavesPerBatch: 0 }, 'out-of-range'],
  ['batchSd', { batchSd: -1 }, 'out-of-range'],
  ['batchSd', { batchSd: 0, loafSd: 0 }, 'out-of-range'],
  ['loafSd', { loafSd: NaN }, 'not-finite'],
])('bad input is refused at its field: %s %j', (field, change, code) => {
  expect(() => batchesPower({ ...q, ...change })).toThrow(code)
  expect(() => batchesPower({ ...q, ...change })).toThrow(`"${field}"`)
})
