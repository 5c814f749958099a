import { expect, test } from 'vitest'
import { varianceComponent } from '@/lib/calc/analysis/variance-component'

test('a variance becomes its standard deviation, a negative one zero and said', () => {
  expect(varianceComponent(9, 4)).toEqual({ sd: 3, df: 4, heldAtZero: false })
  expect(varianceComponent(-0.5, 4)).toEqual({ sd: 0, df: 4, heldAtZero: true })
})
