import { expect, test } from 'vitest'
import { doughForTin } from '@/lib/calc/tin/dough-for-tin'
import { fromTinThatWorks } from '@/lib/calc/tin/from-tin-that-works'

test('the ratio that it keeps gives the dough of both tins', () => {
  const found = fromTinThatWorks({ tinVolumeMl: 1700, doughMassG: 910, newTinVolumeMl: 2300 })
  expect(doughForTin({ tinVolumeMl: 1700, tinMlPerG: found.tinMlPerG }).doughMassG).toBeCloseTo(910, 10)
  expect(doughForTin({ tinVolumeMl: 2300, tinMlPerG: found.tinMlPerG }).doughMassG).toBeCloseTo(found.newDoughMassG, 10)
})

test('an empty tin is refused', () => {
  expect(() => fromTinThatWorks({ tinVolumeMl: 0, doughMassG: 910, newTinVolumeMl: 2300 })).toThrow(
    expect.objectContaining({ code: 'out-of-range' }),
  )
})
