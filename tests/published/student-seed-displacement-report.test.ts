import { specificVolumeMlPerG } from '@/lib/calc/loaf/specific-volume'
import { publishedCheck } from '@/tests/support/published-check'

for (const [volumeMl, massG, expected] of [
  [300, 47.79, 6.277],
  [1900, 405.71, 4.683],
] as const) {
  publishedCheck({
    id: 'P-6.1',
    of: ['loaf/specific-volume'],
    what: `specific volume of ${volumeMl} mL, ${massG} g`,
    source: 'Student laboratory report on seed displacement, web',
    status: 'published',
    expected,
    got: () => specificVolumeMlPerG({ volumeMl, massG }),
    tolerance: { absolute: 6e-4 },
    why: 'printed to 0.001',
  })
}
