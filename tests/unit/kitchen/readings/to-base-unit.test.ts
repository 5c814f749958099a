import { describe, expect, it } from 'vitest'
import { fromBaseUnit } from '@/lib/kitchen/readings/from-base-unit'
import { toBaseUnit } from '@/lib/kitchen/readings/to-base-unit'
import { unitsOfBase } from '@/lib/kitchen/readings/units-of-base'

describe('a reading in its base unit', () => {
  // NIST Special Publication 811 (2008), appendix B.8; pound and ounce to the last digit: NIST Handbook 44, appendix C. From memory.
  it.each([
    ['1', 'kg', 'g', 1000],
    ['1.005', 'kg', 'g', 1005],
    ['1', 'lb', 'g', 453.59237],
    ['16', 'oz', 'g', 453.59237],
    ['1.85', 'L', 'mL', 1850],
    ['55.5', 'min', 's', 3330],
    ['1.5', 'h', 's', 5400],
    ['32', '°F', '°C', 0],
    ['212', '°F', '°C', 100],
    ['-40', '°F', '°C', -40],
    ['78.8', '°F', '°C', 26],
    ['412.5', 'g', 'g', 412.5],
    ['7.5', 'points', 'points', 7.5],
  ])('%s %s are so many %s', (number, unit, baseUnit, expected) => {
    expect(toBaseUnit({ number, unit, baseUnit })).toBe(expected)
    expect(fromBaseUnit({ value: expected, unit, baseUnit })).toBeCloseTo(Number(number), 12)
  })

  it('is not made out of a unit of another kind', () => {
    expect(toBaseUnit({ number: '1', unit: 'L', baseUnit: 'g' })).toBeUndefined()
    expect(toBaseUnit({ number: '1', unit: 'g', baseUnit: 'points' })).toBeUndefined()
    expect(unitsOfBase('g')).toEqual(['g', 'kg', 'oz', 'lb'])
    expect(unitsOfBase('points')).toEqual(['points'])
  })
})
