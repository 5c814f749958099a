import { expect, test } from 'vitest'
import { comparePh } from '@/lib/calc/acidity/compare-ph'

test('the other way round is one over it, and alike is once', () => {
  const there = comparePh({ controlPh: 5.3, armPh: 4.4 }).timesAsAcid
  expect(there * comparePh({ controlPh: 4.4, armPh: 5.3 }).timesAsAcid).toBeCloseTo(1, 12)
  expect(comparePh({ controlPh: 5, armPh: 5 })).toEqual({ differencePh: 0, timesAsAcid: 1 })
})

test('what is no pH is refused', () => {
  expect(() => comparePh({ controlPh: 14.1, armPh: 5 })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'controlPh' }) }),
  )
})
