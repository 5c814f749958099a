import { expect, test } from 'vitest'
import { CalcError } from '@/lib/calc/error'
import { refuseIndefinite } from '@/lib/calc/mixed-model/refuse-indefinite'
import { spdInverse } from '@/lib/calc/mixed-model/spd-inverse'

test('only a matrix that is not definite is turned into a refusal of the rows', () => {
  expect(refuseIndefinite('zero-variance', () => 3)).toBe(3)
  expect(() => refuseIndefinite('zero-variance', () => spdInverse([[0]]))).toThrow(
    'not-possible: {"field":"rows","reason":"zero-variance"}',
  )
  const other = new CalcError('empty', { field: 'arms' })
  const failing = () => {
    throw other
  }
  expect(() => refuseIndefinite('zero-variance', failing)).toThrow(other)
})
