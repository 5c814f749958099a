import { expect, it } from 'vitest'
import { isOutside, rangeOfReading } from '@/lib/kitchen/readings/range-of-reading'

const measure = { plausibleLeast: 20, plausibleMost: 5000 }

it('a reading is judged by the range that it was kept with, and else by its measure’s own', () => {
  expect(rangeOfReading({ plausibleLeast: 240, plausibleMost: 720 }, measure)).toEqual({ least: 240, most: 720 })
  expect(rangeOfReading({ plausibleLeast: null, plausibleMost: null }, measure)).toEqual({ least: 20, most: 5000 })
})

it('is outside beyond either end, and not at an end', () => {
  const outside = (value: number) => isOutside({ value, plausibleLeast: 240, plausibleMost: 720 }, measure)
  expect([239.9, 240, 720, 720.1].map(outside)).toEqual([true, false, false, true])
})
