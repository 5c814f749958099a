import { expect, test } from 'vitest'
import { activityProductMassG } from '@/lib/calc/dosing/activity-product-mass'

const assay = { method: 'assay A, 30 °C, pH 5', unit: 'U' }
const q = {
  unitsPerKgFlour: 5000,
  wanted: assay,
  flourMassG: 10_000,
  product: { activity: assay, unitsPerG: 20_000, strengthShare: 1 },
}

test('activity on flour over activity of the product', () => expect(activityProductMassG(q)).toBeCloseTo(2.5, 12))
test('a measured strength counts', () =>
  expect(activityProductMassG({ ...q, product: { ...q.product, strengthShare: 0.5 } })).toBeCloseTo(5, 12))
test('another assay is refused with the way out', () =>
  expect(() => activityProductMassG({ ...q, wanted: { ...assay, method: 'assay B' } })).toThrow(
    expect.objectContaining({ code: 'not-possible', facts: expect.objectContaining({ reason: 'dose-by-effect' }) }),
  ))
