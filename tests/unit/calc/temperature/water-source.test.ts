import { describe, expect, test } from 'vitest'
import { ICE_CONSTANTS } from '@/lib/calc/temperature/ice-heat'
import { waterSource } from '@/lib/calc/temperature/water-source'

const q = {
  waterMassG: 1000,
  wantedTempC: 20,
  coldTempC: 12,
  hotTempC: 52,
  mostTempC: 40,
  iceTempC: 0,
  convention: 'replacing' as const,
  mostIceShare: 0.5,
  constants: ICE_CONSTANTS,
}

test('between the taps they are mixed', () =>
  expect(waterSource(q)).toEqual({ outcome: 'mix', coldMassG: 800, hotMassG: 200, iceMassG: 0 }))
test('exactly the cold tap needs nothing else', () =>
  expect(waterSource({ ...q, wantedTempC: 12 })).toMatchObject({ outcome: 'mix', coldMassG: 1000, hotMassG: 0 }))
test('two taps of one temperature are no division by zero', () =>
  expect(waterSource({ ...q, coldTempC: 20, hotTempC: 20 })).toMatchObject({ outcome: 'mix', hotMassG: 0 }))
test('colder than the tap is ice, and replacing keeps the total', () => {
  const result = waterSource({ ...q, wantedTempC: 2 })
  expect(result.outcome).toBe('ice')
  if (result.outcome === 'ice') expect(result.coldMassG + result.iceMassG).toBeCloseTo(1000, 9)
})
test('ice added comes on top of all the water', () =>
  expect(waterSource({ ...q, wantedTempC: 2, convention: 'adding' })).toMatchObject({
    outcome: 'ice',
    coldMassG: 1000,
  }))
test('below freezing is answered with ice as long as there is water to replace', () =>
  expect(waterSource({ ...q, wantedTempC: -15 })).toMatchObject({ outcome: 'ice' }))

describe('when no water can do it the answer says so and how near it comes', () => {
  test('hotter than the yeast may have', () =>
    expect(waterSource({ ...q, wantedTempC: 45 })).toEqual({
      outcome: 'not-possible',
      reason: 'hotter-than-allowed',
      reachableTempC: 40,
    }))
  test('more ice than melts while mixing', () => {
    const result = waterSource({ ...q, wantedTempC: -50 })
    expect(result).toMatchObject({ outcome: 'not-possible', reason: 'too-much-ice' })
    if (result.outcome !== 'not-possible') throw new Error()
    const nearest = waterSource({ ...q, wantedTempC: result.reachableTempC + 1e-9 })
    expect(nearest).toMatchObject({ outcome: 'ice', iceMassG: expect.closeTo(500, 5) })
  })
  test('colder than all of it as ice', () =>
    expect(waterSource({ ...q, wantedTempC: -90 })).toMatchObject({
      outcome: 'not-possible',
      reason: 'colder-than-all-ice',
    }))
})

test('ice added for water below freezing never melts; the nearest is what melted ice brings', () => {
  const result = waterSource({ ...q, wantedTempC: -5, convention: 'adding' })
  expect(result).toMatchObject({ outcome: 'not-possible', reason: 'never-melts' })
  if (result.outcome === 'not-possible') expect(result.reachableTempC).toBeCloseTo(0, 9)
})
