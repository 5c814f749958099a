import { expect, test } from 'vitest'
import { mixStep, PURE } from '@/lib/calc/weighing/mix-step'
import { portionRoute } from '@/lib/calc/weighing/portion-route'

const scales = [{ id: 'a', resolutionG: 1, capacityG: 1000, uncertaintyG: 0.5 }]
const aim = { doseG: 2, errorShare: 0.1, coverageFactor: 2, mostCarrierG: 50, mostPremixG: 2000 }
const tenth = mixStep(scales, PURE, 10, 90)!

test('the product itself is weighed directly', () =>
  expect(portionRoute(aim, scales, PURE)).toMatchObject({
    outcome: 'direct',
    portionG: 2,
    errorShare: 0.5,
    productLeftG: 0,
  }))

test('a portion of the premix brings dose and carrier, and leaves the rest', () => {
  const route = portionRoute(aim, scales, tenth)
  expect(route).toMatchObject({ outcome: 'premix', premixMadeG: 100, productLeftG: 8 })
  expect(route?.portionG).toBeCloseTo(20, 12)
  expect(route?.carrierInPortionG).toBeCloseTo(18, 12)
  expect(route?.errorShare).toBeCloseTo(2 * Math.sqrt(tenth.variance + 0.025 ** 2), 14)
})

test('too little premix, too much carrier and a portion beyond the scale are no route', () => {
  expect(portionRoute({ ...aim, doseG: 11 }, scales, tenth)).toBeNull()
  expect(portionRoute({ ...aim, mostCarrierG: 17 }, scales, tenth)).toBeNull()
  expect(portionRoute({ ...aim, doseG: 1001 }, scales, PURE)).toBeNull()
})
