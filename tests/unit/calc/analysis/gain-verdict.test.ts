import fc from 'fast-check'
import { expect, test } from 'vitest'
import { gainVerdict } from '@/lib/calc/analysis/gain-verdict'

const of = (low: number, estimate: number, high: number) =>
  gainVerdict({ low, estimate, high, worthwhile: 5, goodDirection: 'larger' })

test.each([
  ['better: wholly above zero, estimate worth having', 1, 6, 11, 'better', false],
  ['better at exactly the worthwhile difference', 1, 5, 9, 'better', false],
  ['clearly better: the whole interval is worth having', 5, 8, 11, 'better', true],
  ['worse: wholly below zero', -9, -4, -1, 'worse', false],
  ['worse even when the loss is small', -4, -2, -1, 'worse', false],
  ['clearly worse', -12, -8, -5, 'worse', true],
  ['no worthwhile difference about zero', -3, 0, 4, 'no-worthwhile-difference', false],
  ['no worthwhile difference though above zero', 1, 2, 4, 'no-worthwhile-difference', false],
  ['undecided: above zero, estimate too small, interval too wide', 1, 4, 7, 'undecided', false],
  ['undecided: large estimate, zero inside', -1, 8, 17, 'undecided', false],
  ['undecided: a limit at zero is not above it', 0, 8, 16, 'undecided', false],
  ['undecided: a limit at the worthwhile difference is not within', -1, 2, 5, 'undecided', false],
] as const)('%s', (_, low, estimate, high, verdict, clearly) => {
  expect(of(low, estimate, high)).toEqual({ verdict, clearly })
})

test('where smaller is better everything is mirrored', () => {
  const number = fc.double({ min: -20, max: 20, noNaN: true })
  fc.assert(
    fc.property(number, fc.double({ min: 0, max: 20, noNaN: true }), (estimate, width) => {
      const q = { estimate, low: estimate - width, high: estimate + width, worthwhile: 5 }
      const mirrored = { estimate: -q.estimate, low: -q.high, high: -q.low, worthwhile: 5 }
      expect(gainVerdict({ ...q, goodDirection: 'larger' })).toEqual(
        gainVerdict({ ...mirrored, goodDirection: 'smaller' }),
      )
    }),
    { seed: 6 },
  )
})

test('a loss that matters may be of another size than a gain that does', () => {
  const at = (low: number, estimate: number, high: number) =>
    gainVerdict({ low, estimate, high, worthwhile: 5, loss: 3, goodDirection: 'larger' })
  expect(at(-2, 1, 4)).toEqual({ verdict: 'no-worthwhile-difference', clearly: false })
  expect(at(-3, 0.5, 4)).toEqual({ verdict: 'undecided', clearly: false })
  expect(at(-9, -6, -3)).toEqual({ verdict: 'worse', clearly: true })
  expect(at(-9, -6, -2)).toEqual({ verdict: 'worse', clearly: false })
  expect(at(5, 6, 7)).toEqual({ verdict: 'better', clearly: true })
  expect(() => gainVerdict({ estimate: 1, low: 0, high: 2, worthwhile: 5, loss: 0, goodDirection: 'larger' })).toThrow(
    'loss',
  )
})

test('a measure without a direction gets no verdict', () => {
  expect(gainVerdict({ estimate: 9, low: 8, high: 10, worthwhile: 5, goodDirection: null })).toBeNull()
})

test('no worthwhile difference declared, and an estimate outside its interval, are refused', () => {
  expect(() => gainVerdict({ estimate: 9, low: 8, high: 10, worthwhile: 0, goodDirection: 'larger' })).toThrow(
    'out-of-range',
  )
  expect(() => of(2, 1, 3)).toThrow('wrong-shape')
})
