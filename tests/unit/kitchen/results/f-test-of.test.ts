import { expect, it } from 'vitest'
import { fTestOf } from '@/lib/kitchen/results/f-test-of'

it('a row is tested against the degrees of freedom of its error', () => {
  expect(fTestOf({ df: 2, f: 5.5, p: 0.03 }, 8)).toEqual({ f: 5.5, df1: 2, df2: 8, p: 0.03 })
})

it('a row without a test is not given one', () => {
  expect(() => fTestOf({ df: 8, f: null, p: null }, 8)).toThrow('not there: the F of a row')
})
