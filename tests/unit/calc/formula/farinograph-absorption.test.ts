import { expect, test } from 'vitest'
import { farinographAbsorptionPct } from '@/lib/calc/formula/farinograph-absorption'

const run = { bowlG: 300 as const, flourMassG: 300, waterMl: 180, consistencyUnits: 500 }

test('flour at 14 % exactly and a run on the 500 line: water on flour', () =>
  expect(farinographAbsorptionPct(run)).toBeCloseTo(60, 12))
test('a stiffer dough asks for more water, in either bowl', () => {
  expect(farinographAbsorptionPct({ ...run, consistencyUnits: 510 })).toBeCloseTo(60.32, 10)
  expect(farinographAbsorptionPct({ bowlG: 50, flourMassG: 50, waterMl: 30, consistencyUnits: 510 })).toBeCloseTo(60.32, 10)
})
test('outside 480 to 520 units the correction is not defined', () =>
  expect(() => farinographAbsorptionPct({ ...run, consistencyUnits: 530 })).toThrow(
    expect.objectContaining({ code: 'out-of-range' }),
  ))
