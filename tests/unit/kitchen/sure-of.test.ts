import { expect, it } from 'vitest'
import { sureOf } from '@/lib/kitchen/sure-of'

it('what is there comes back as it is, nothing and none among it', () => {
  expect(sureOf(0, 'a figure')).toBe(0)
  expect(sureOf('', 'a text')).toBe('')
  expect(sureOf(false, 'a tick')).toBe(false)
})

it('what is not there is a fault that says what was missed', () => {
  expect(() => sureOf(undefined, 'the dough of a row')).toThrow('not there: the dough of a row')
  expect(() => sureOf(null, 'the dough of a row')).toThrow('not there: the dough of a row')
})
