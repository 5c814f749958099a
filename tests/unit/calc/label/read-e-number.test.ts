import { expect, test } from 'vitest'
import { readENumber } from '@/lib/calc/label/read-e-number'

test.each([
  ['E300', 'E 300'],
  [' e 150D ', 'E 150d'],
  ['E1422', 'E 1422'],
  ['E 500 (II)', 'E 500 (ii)'],
])('%s is written %s', (eNumber, expected) =>
  expect(readENumber({ eNumber, additiveClass: 'colour' }, 'eNumber')).toBe(expected),
)

test('none given is none', () => {
  expect(readENumber({}, 'eNumber')).toBeNull()
  expect(readENumber({ eNumber: ' ' }, 'eNumber')).toBeNull()
})

test.each(['300', 'E 30', 'E 30000', 'E-300', 'E 300 and salt'])('%s is no E number', (eNumber) =>
  expect(() => readENumber({ eNumber, additiveClass: 'acid' }, 'lines[0].eNumber')).toThrow(
    expect.objectContaining({
      code: 'wrong-shape',
      facts: { field: 'lines[0].eNumber', value: eNumber, reason: 'no-e-number' },
    }),
  ),
)

test('a number without a class is refused', () =>
  expect(() => readENumber({ eNumber: 'E 300' }, 'eNumber')).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ reason: 'number-without-class' }) }),
  ))
