import { expect, test } from 'vitest'
import { CalcError } from '@/lib/calc/error'
import { atFlatFields } from '@/lib/calc/flat-fields'

const refuse = (field: string) => () => {
  throw new CalcError('out-of-range', { field, value: 0, min: 1 })
}

test('an answer is handed through', () => expect(atFlatFields(['design.'], () => 7)).toBe(7))

test('a fault names the field of the flat question and keeps its facts', () => {
  expect(() => atFlatFields(['spread.', 'design.'], refuse('design.blocks'))).toThrow(
    expect.objectContaining({ code: 'out-of-range', facts: { field: 'blocks', value: 0, min: 1 } }),
  )
})

test('a field can be named by a rule', () => {
  expect(() => atFlatFields((field) => field.replace('to.', 'to '), refuse('to.share'))).toThrow(
    expect.objectContaining({ facts: { field: 'to share', value: 0, min: 1 } }),
  )
})

test('a field can be named by the first word of what is refused', () => {
  const fieldOf = (field: string) => {
    try {
      atFlatFields({ x: 'readings' }, refuse(field))
    } catch (error) {
      return (error as CalcError).facts.field
    }
  }
  expect(['x', 'x[0][1]', 'xy', 'confidence', 'constructor'].map(fieldOf)).toEqual([
    'readings',
    'readings',
    'xy',
    'confidence',
    'constructor',
  ])
})

test('other faults stay as they are', () => {
  expect(() => atFlatFields(['design.'], refuse('runs'))).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'runs' }) }),
  )
  const bug = () => {
    throw new TypeError('a bug')
  }
  expect(() => atFlatFields(['design.'], bug)).toThrow(TypeError)
})
