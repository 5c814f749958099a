import { expect, test } from 'vitest'
import { agreeReadings } from '@/lib/calc/loaf/agree-readings'

const repeatabilityLimit = 28
test('one reading asks for another', () =>
  expect(agreeReadings({ readings: [2000], repeatabilityLimit })).toMatchObject({
    outcome: 'needs-another',
    value: null,
  }))
test('two within the limit are averaged, also exactly on it', () =>
  expect(agreeReadings({ readings: [2000, 2028], repeatabilityLimit })).toMatchObject({ outcome: 'mean', value: 2014 }))
test('two further apart need a third', () =>
  expect(agreeReadings({ readings: [2000, 2029], repeatabilityLimit })).toMatchObject({ outcome: 'needs-another' }))
test('three within the critical range of three are averaged', () =>
  expect(agreeReadings({ readings: [2000, 2030, 2015], repeatabilityLimit })).toMatchObject({
    outcome: 'mean',
    value: 2015,
    criticalRange: expect.closeTo(33, 10),
  }))
test('three that do not agree give their median', () =>
  expect(agreeReadings({ readings: [2000, 2040, 2005], repeatabilityLimit })).toMatchObject({
    outcome: 'median',
    value: 2005,
  }))
test('four readings are refused', () =>
  expect(() => agreeReadings({ readings: [1, 2, 3, 4], repeatabilityLimit })).toThrow(
    expect.objectContaining({ code: 'wrong-shape' }),
  ))
