import { expect, test } from 'vitest'
import { seedBulkDensityGPerMl } from '@/lib/calc/loaf/seed-bulk-density'

test('mean filling over the volume of the box', () =>
  expect(seedBulkDensityGPerMl({ fillingMassesG: [660, 680], boxVolumeMl: 1000 })).toBeCloseTo(0.67, 12))
test('no filling is refused', () =>
  expect(() => seedBulkDensityGPerMl({ fillingMassesG: [], boxVolumeMl: 1000 })).toThrow(
    expect.objectContaining({ code: 'empty' }),
  ))
