import { expect, test } from 'vitest'
import { minutesAtTemperature } from '@/lib/calc/fermentation/minutes-at-temperature'
import { minutesWhileCooling } from '@/lib/calc/fermentation/minutes-while-cooling'

test('a dough that is as cold as its cabinet from the start ferments as at one temperature', () => {
  const cooled = minutesWhileCooling({
    startTempC: 12,
    cabinetTempC: 12,
    timeConstantMin: 90,
    minutes: 300,
    referenceTempC: 26,
  })
  const steady = minutesAtTemperature({ minutes: 300, tempC: 12, otherTempC: 26 })
  expect(cooled.endTempC).toBe(12)
  cooled.rules.forEach(({ minutes }, i) => expect(minutes).toBeCloseTo(steady.rules[i]!.minutes, 6))
})

test('slower cooling ferments more, by every rule', () => {
  const q = { startTempC: 26, cabinetTempC: 4, minutes: 720, referenceTempC: 26 }
  const [quick, slow] = [
    minutesWhileCooling({ ...q, timeConstantMin: 40 }),
    minutesWhileCooling({ ...q, timeConstantMin: 160 }),
  ]
  slow.rules.forEach(({ minutes }, i) => expect(minutes).toBeGreaterThan(quick.rules[i]!.minutes))
  expect(slow.warnings).toEqual(['rules-differ-in-the-cold'])
})

test('cooling at once is refused, and so is a reference at which nothing works', () => {
  const q = { startTempC: 26, cabinetTempC: 4, timeConstantMin: 90, minutes: 720, referenceTempC: 26 }
  expect(() => minutesWhileCooling({ ...q, timeConstantMin: 0 })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'timeConstantMin' }) }),
  )
  expect(() => minutesWhileCooling({ ...q, referenceTempC: 2 })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'referenceTempC' }) }),
  )
})
