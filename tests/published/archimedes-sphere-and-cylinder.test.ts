import { volumeFromSlicesMl } from '@/lib/calc/loaf/volume-from-slices'
import { publishedCheck } from '@/tests/support/published-check'

const SLICES = 400
const RADIUS_MM = 80

publishedCheck({
  of: ['loaf/volume-from-slices'],
  what: 'a ball is two thirds of the cylinder around it, here cut into 400 slices, mL',
  source: 'Archimedes, On the Sphere and Cylinder, book I, corollary to proposition 34',
  status: 'published inputs',
  expected: ((2 / 3) * Math.PI * RADIUS_MM ** 2 * 2 * RADIUS_MM) / 1000,
  got: () => {
    const spacingMm = (2 * RADIUS_MM) / SLICES
    const sliceAreasMm2 = Array.from(
      { length: SLICES },
      (_, i) => Math.PI * (RADIUS_MM ** 2 - ((i + 0.5) * spacingMm - RADIUS_MM) ** 2),
    )
    return volumeFromSlicesMl({ sliceAreasMm2, spacingMm })
  },
  tolerance: { relative: 1e-5 },
  why: 'midpoint rule, error 1/(2 n²) of the volume',
})
