import { describe, expect, test } from 'vitest'
import {
  mustBeGiven,
  mustBeReading,
  mustBeWhole,
  mustBeWithin,
  mustHaveAtLeast,
  mustHaveAtMost,
  mustMatchLength,
  mustOrder,
  mustVary,
} from '../../../lib/calc/checks'
import { CalcError } from '../../../lib/calc/error'

/** The refusal of a guard, or nothing when it lets the value through. */
function refusalOf(guard: () => unknown): Pick<CalcError, 'code' | 'facts'> | undefined {
  try {
    guard()
    return undefined
  } catch (error) {
    if (!(error instanceof CalcError)) throw error
    return { code: error.code, facts: error.facts }
  }
}

describe('mustBeWithin', () => {
  test.each([
    ['the lower end of a closed range', 0, { min: 0, max: 1 }],
    ['the upper end of a closed range', 1, { min: 0, max: 1 }],
    ['the least number above an open end', Number.MIN_VALUE, { over: 0 }],
    ['any finite number without bounds', -1e308, {}],
  ])('lets %s through unchanged', (_, value, bounds) => {
    expect(mustBeWithin('massG', value, bounds)).toBe(value)
  })

  test.each([
    ['below a closed end', -Number.MIN_VALUE, { min: 0 }, { min: 0 }],
    ['above a closed end', 1 + Number.EPSILON, { max: 1 }, { max: 1 }],
    ['on an open lower end', 0, { over: 0 }, { min: 0 }],
    ['on an open upper end', 100, { under: 100 }, { max: 100 }],
  ])('refuses a number %s and names the bound', (_, value, bounds, facts) => {
    expect(refusalOf(() => mustBeWithin('massG', value, bounds))).toEqual({
      code: 'out-of-range',
      facts: { field: 'massG', value, ...facts },
    })
  })

  test.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])(
    'refuses %s, which no bounds would catch',
    (value) => {
      expect(refusalOf(() => mustBeWithin('massG', value))).toEqual({
        code: 'not-finite',
        facts: { field: 'massG', value: String(value) },
      })
    },
  )

  test('refuses text, which a form may hand over against the types', () => {
    expect(refusalOf(() => mustBeWithin('massG', '5' as unknown as number))?.code).toBe('not-finite')
  })
})

test('a number that must be whole is handed back when it is, and refused apart from one outside its bounds', () => {
  expect(mustBeWhole('pieces', 3, { min: 1 })).toBe(3)
  expect(refusalOf(() => mustBeWhole('pieces', 2.5, { min: 1 }))).toEqual({
    code: 'out-of-range',
    facts: { field: 'pieces', value: 2.5, min: 1, reason: 'not-whole' },
  })
  expect(refusalOf(() => mustBeWhole('pieces', 0, { min: 1 }))).toEqual({
    code: 'out-of-range',
    facts: { field: 'pieces', value: 0, min: 1 },
  })
})

test('a list with too few members is refused with how many there are, one with enough is handed back', () => {
  const list = [1, 2]
  expect(mustHaveAtLeast('readings', list, 2)).toBe(list)
  expect(refusalOf(() => mustHaveAtLeast('readings', list, 3))).toEqual({
    code: 'empty',
    facts: { field: 'readings', value: 2, min: 3 },
  })
})

test('a list with too many members is refused with how many there may be', () => {
  const list = [1, 2]
  expect(mustHaveAtMost('arms', list, 2)).toBe(list)
  expect(refusalOf(() => mustHaveAtMost('arms', list, 1))).toEqual({
    code: 'wrong-shape',
    facts: { field: 'arms', value: 2, max: 1 },
  })
})

test('a list of another length than the one beside it is refused', () => {
  expect(refusalOf(() => mustMatchLength('weights', [1, 2], 2))).toBeUndefined()
  expect(refusalOf(() => mustMatchLength('weights', [1], 2))).toEqual({
    code: 'wrong-shape',
    facts: { field: 'weights', value: 1, min: 2, max: 2 },
  })
})

test('a quantity that is needed is handed back, zero too, and refused when it is not given', () => {
  expect(mustBeGiven('massG', 0)).toBe(0)
  for (const nothing of [null, undefined]) {
    expect(refusalOf(() => mustBeGiven('massG', nothing))).toEqual({
      code: 'not-possible',
      facts: { field: 'massG', reason: 'not-given' },
    })
  }
})

test('a reading whose square would be no finite number is refused', () => {
  expect(mustBeReading('y', -1e100)).toBe(-1e100)
  expect(refusalOf(() => mustBeReading('y', 1e155))?.code).toBe('out-of-range')
})

test('a spread that is only rounding of the largest value is no variation', () => {
  expect(mustVary('rows', 1e-9, 1000)).toBe(1e-9)
  expect(refusalOf(() => mustVary('rows', 1e-12, 1000))).toEqual({
    code: 'not-possible',
    facts: { field: 'rows', value: 1e-12, reason: 'zero-variance' },
  })
  expect(refusalOf(() => mustVary('rows', 0, 0))?.facts.reason).toBe('zero-variance')
})

test('a stated order names each thing that is there, once', () => {
  expect(mustOrder('order', ['b', 'a'], ['a', 'b'])).toEqual(['b', 'a'])
  expect(() => mustOrder('order', ['b', 'a', 'b'], ['a', 'b'])).toThrow('duplicate')
  expect(() => mustOrder('order', ['b', 'a', 'c'], ['a', 'b'])).toThrow('unknown-level')
  expect(() => mustOrder('order', ['b'], ['a', 'b'])).toThrow('level-not-ordered')
})
