import { expect, test } from 'vitest'
import { linearScale } from '@/lib/ui/charts/linear-scale'

test('maps the ends to the ends, the middle to the middle, and goes on beyond', () => {
  const x = linearScale({ domain: [0, 10], range: [100, 200] })
  expect([0, 5, 10, -1, 12].map(x)).toEqual([100, 150, 200, 90, 220])
})

test('runs the other way round for a height', () => {
  const y = linearScale({ domain: [-1, 1], range: [50, 0] })
  expect([-1, 0, 1].map(y)).toEqual([50, 25, 0])
})

test('refuses a domain without width', () => {
  expect(() => linearScale({ domain: [1, 1], range: [0, 1] })).toThrow(RangeError)
})
