import { expect, test } from 'vitest'
import { farinographAbsorption } from '@/lib/calc/formula/farinograph-absorption'

const run = { bowlG: 300 as const, flourMassG: 300, waterMl: 180, consistencyUnits: 500 }
const absorption = (change: Partial<Parameters<typeof farinographAbsorption>[0]> = {}) =>
  farinographAbsorption({ ...run, ...change })

test('flour at 14 % exactly and a run on the 500 line: water on flour', () => {
  expect(absorption().absorptionPct).toBeCloseTo(60, 12)
  expect(absorption().warnings).toEqual([])
})

test('a stiffer dough asks for more water, in either bowl', () => {
  expect(absorption({ consistencyUnits: 510 }).absorptionPct).toBeCloseTo(60.32, 10)
  expect(absorption({ bowlG: 50, flourMassG: 50, waterMl: 30, consistencyUnits: 510 }).absorptionPct).toBeCloseTo(
    60.32,
    10,
  )
})

test('what no wheat flour takes up is said', () => {
  expect(absorption({ waterMl: 120 }).warnings).toEqual(['unusual-absorption'])
  expect(absorption({ waterMl: 240 }).warnings).toEqual(['unusual-absorption'])
})

test.each([
  ['a correction that is not defined', { consistencyUnits: 530 }, 'consistencyUnits'],
  ['flour for the other bowl', { flourMassG: 50 }, 'flourMassG'],
  ['flour that is wetter than flour keeps', { flourMassG: 340 }, 'flourMassG'],
  ['less flour than there is dry matter', { flourMassG: 250 }, 'flourMassG'],
  ['water in litres', { waterMl: 0.18 }, 'waterMl'],
  ['twice as much water as flour', { waterMl: 600 }, 'waterMl'],
])('%s is refused', (_, change, field) =>
  expect(() => absorption(change)).toThrow(
    expect.objectContaining({ code: 'out-of-range', facts: expect.objectContaining({ field }) }),
  ),
)
