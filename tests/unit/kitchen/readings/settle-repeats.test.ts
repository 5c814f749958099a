import { expect, it } from 'vitest'
import { settleRepeats } from '@/lib/kitchen/readings/settle-repeats.input'

const settle = (values: number[], repeats = 2, repeatLimit: number | null = null) =>
  settleRepeats({ values, repeats, repeatLimit })

it('asks for the repeat that the measure wants', () => {
  expect(settle([1900])).toMatchObject({ value: 1900, n: 1, sd: null, settled: false, needs: 'repeat' })
  expect(settle([1900], 1)).toMatchObject({ value: 1900, settled: true, needs: null })
})

it('takes the mean of two that agree within 2 % of their mean', () => {
  // 2 % of 1900 is 38.
  expect(settle([1881, 1919])).toMatchObject({ value: 1900, range: 38, repeatLimit: 38, settled: true, needs: null })
})

it('asks for a third when two disagree', () => {
  expect(settle([1880, 1920])).toMatchObject({ value: 1900, settled: false, needs: 'third' })
})

it('goes by the measure’s own limit where it has one', () => {
  expect(settle([1880, 1920], 2, 50)).toMatchObject({ settled: true })
  expect(settle([1895, 1905], 2, 5)).toMatchObject({ needs: 'third' })
})

// Critical range for three at 95 %: 3.3/2.8 of the limit for two, ISO 5725-6:1994 as in lib/calc/loaf/agree-readings.
it('takes the mean of three that agree, else their median', () => {
  expect(settle([1880, 1920, 1900], 2, 38)).toMatchObject({ value: 1900, outcome: 'mean', settled: true, needs: null })
  expect(settle([1850, 1920, 1930], 2, 38)).toMatchObject({ value: 1920, outcome: 'median', settled: true })
})

it('takes the median of four or more', () => {
  expect(settle([1, 2, 4, 100])).toMatchObject({ value: 3, outcome: 'median', settled: true, n: 4 })
  expect(settle([1, 2, 4, 100, 5])).toMatchObject({ value: 4 })
})

it('does without a limit where the mean is zero', () => {
  expect(settle([0, 0])).toMatchObject({ value: 0, settled: true })
})
