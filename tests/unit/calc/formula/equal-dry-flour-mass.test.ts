import { expect, test } from 'vitest'
import { equalDryFlourMassG } from '@/lib/calc/formula/equal-dry-flour-mass'

test('all water and no flour has no basis', () => {
  expect(() => equalDryFlourMassG({ flourMassG: 1, fromMoisturePct: 14, toMoisturePct: 100 })).toThrow(
    expect.objectContaining({ code: 'out-of-range' }),
  )
})
