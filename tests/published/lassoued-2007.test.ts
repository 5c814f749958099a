import { scanScale } from '@/lib/calc/loaf/scan-scale'
import { publishedCheck } from '@/tests/support/published-check'

const scan = () => scanScale({ by: 'dpi', resolutionDpi: 300 })
for (const [what, expected, got, absolute] of [
  ['side of a pixel at 300 dpi, µm (printed 85)', 84.667, () => scan().pixelUm, 5e-4],
  ['area of that pixel, mm²', 0.0071684, () => scan().pixelAreaMm2, 5e-8],
] as const) {
  publishedCheck({
    id: 'P-8.1',
    of: ['loaf/scan-scale'],
    what,
    source: 'Lassoued et al. 2007: slices scanned at 300 dpi',
    status: 'published inputs',
    expected,
    got,
    tolerance: { absolute },
    why: 'half of the last digit',
  })
}
