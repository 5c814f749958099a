import { expect, test } from 'vitest'
import { scanScale } from '@/lib/calc/loaf/scan-scale'

test('a ruler that says what the dpi say gives the same pixel', () => {
  const byDpi = scanScale({ by: 'dpi', resolutionDpi: 600 })
  const byRuler = scanScale({ by: 'ruler', rulerMm: 127, rulerPixels: 3000 })
  expect(byRuler.pixelUm).toBeCloseTo(byDpi.pixelUm, 12)
  expect(byRuler.scannedDpi).toBeCloseTo(600, 10)
})

test('the area is the square of the side', () => {
  const { pixelUm, pixelAreaMm2 } = scanScale({ by: 'dpi', resolutionDpi: 200 })
  expect(pixelAreaMm2).toBeCloseTo((pixelUm / 1000) ** 2, 15)
})

test('what the choice needs is asked for, and no resolution is refused', () => {
  expect(() => scanScale({ by: 'ruler', rulerMm: 100 })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'rulerPixels', reason: 'not-given' }) }),
  )
  expect(() => scanScale({ by: 'dpi', resolutionDpi: 0 })).toThrow(expect.objectContaining({ code: 'out-of-range' }))
})
