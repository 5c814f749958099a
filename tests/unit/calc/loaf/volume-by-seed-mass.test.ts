import { expect, test } from 'vitest'
import { seedBulkDensityGPerMl } from '@/lib/calc/loaf/seed-bulk-density'
import { volumeBySeedMassMl } from '@/lib/calc/loaf/volume-by-seed-mass'

test('a block as large as half of the box keeps out half of the seed', () => {
  const bulkDensityGPerMl = seedBulkDensityGPerMl({ fillingMassesG: [2680, 2676, 2684], boxVolumeMl: 4000 })
  expect(volumeBySeedMassMl({ seedMassFullG: 2680, seedMassWithLoafG: 1340, bulkDensityGPerMl })).toBeCloseTo(2000, 9)
})
test('more seed with the loaf than without is refused', () =>
  expect(() => volumeBySeedMassMl({ seedMassFullG: 100, seedMassWithLoafG: 101, bulkDensityGPerMl: 0.67 })).toThrow(
    expect.objectContaining({ code: 'not-possible' }),
  ))
test('a bulk density in kg/m³ is caught', () =>
  expect(() => volumeBySeedMassMl({ seedMassFullG: 100, seedMassWithLoafG: 50, bulkDensityGPerMl: 670 })).toThrow(
    expect.objectContaining({ code: 'out-of-range' }),
  ))
