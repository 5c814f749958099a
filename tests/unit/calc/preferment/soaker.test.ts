import { expect, test } from 'vitest'
import { soaker } from '@/lib/calc/preferment/soaker'

const q = { flourMassG: 2000, waterMassG: 1300, soakedMassG: 400, soakPct: 120, pouredOffG: 0 }

test('liquid that was poured off takes as much out of the water to weigh, and the dough’s own water stays', () => {
  const found = soaker({ ...q, pouredOffG: 90 })
  expect(found.waterToWeighG).toBe(1210)
  expect(found.doughWaterOnFlourPct).toBe(65)
  expect(found.allWaterOnFlourPct).toBeCloseTo((100 * (1210 + 480)) / 2000, 10)
})

test('more liquid left than was poured on is refused', () => {
  expect(() => soaker({ ...q, pouredOffG: 481 })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'pouredOffG', max: 480 }) }),
  )
})

test('without a soaker all three meanings agree', () => {
  const found = soaker({ ...q, soakedMassG: 0 })
  expect([found.allWaterOnFlourPct, found.allWaterOnFlourAndSoakedPct]).toEqual([65, 65])
})
