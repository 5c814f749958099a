import { expect, test } from 'vitest'
import { doughForTin } from '@/lib/calc/tin/dough-for-tin'

test('the dough grows with the tin and shrinks with the ratio', () => {
  expect(doughForTin({ tinVolumeMl: 3000, tinMlPerG: 2 }).doughMassG).toBe(
    2 * doughForTin({ tinVolumeMl: 1500, tinMlPerG: 2 }).doughMassG,
  )
  expect(doughForTin({ tinVolumeMl: 1500, tinMlPerG: 3 }).doughMassG).toBe(500)
})

test('a ratio that no usual bread has is answered with a word, an impossible one refused', () => {
  expect(doughForTin({ tinVolumeMl: 1500, tinMlPerG: 1.2 }).warnings).toEqual(['unusual-ratio'])
  expect(doughForTin({ tinVolumeMl: 1500, tinMlPerG: 4.39 }).warnings).toEqual([])
  expect(() => doughForTin({ tinVolumeMl: 1500, tinMlPerG: 0.5 })).toThrow(
    expect.objectContaining({ code: 'out-of-range' }),
  )
})
