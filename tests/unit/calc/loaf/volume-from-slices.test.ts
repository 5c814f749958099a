import { expect, test } from 'vitest'
import { volumeFromSlicesMl } from '@/lib/calc/loaf/volume-from-slices'

test('a half ellipsoid cut into slices comes to its known volume', () => {
  const [lengthMm, widthMm, heightMm, n] = [200, 120, 100, 40]
  const spacingMm = lengthMm / n
  const sliceAreasMm2 = Array.from({ length: n }, (_, i) => {
    const x = ((i + 0.5) * spacingMm - lengthMm / 2) / (lengthMm / 2)
    return (Math.PI / 2) * (widthMm / 2) * heightMm * (1 - x * x)
  })
  const exactMl = ((2 / 3) * Math.PI * (lengthMm / 2) * (widthMm / 2) * heightMm) / 1000
  expect(volumeFromSlicesMl({ sliceAreasMm2, spacingMm }) / exactMl).toBeCloseTo(1, 3)
})
test('two slices are no loaf', () =>
  expect(() => volumeFromSlicesMl({ sliceAreasMm2: [1, 1], spacingMm: 10 })).toThrow(
    expect.objectContaining({ code: 'empty' }),
  ))
