import { expect, test } from 'vitest'
import { softerThanControl } from '@/lib/calc/staling/softer-than-control'

test('alike is nought, half as firm is 50 % softer and the control 100 % firmer, and a firmer dough is below nought', () => {
  expect(softerThanControl({ controlFirmness: 5, armFirmness: 5 })).toEqual({ softerPct: 0, controlFirmerPct: 0 })
  expect(softerThanControl({ controlFirmness: 6, armFirmness: 3 })).toEqual({ softerPct: 50, controlFirmerPct: 100 })
  expect(softerThanControl({ controlFirmness: 4, armFirmness: 5 }).softerPct).toBeCloseTo(-25, 12)
})

test('no firmness is refused', () => {
  expect(() => softerThanControl({ controlFirmness: 0, armFirmness: 5 })).toThrow(
    expect.objectContaining({ code: 'out-of-range' }),
  )
})
