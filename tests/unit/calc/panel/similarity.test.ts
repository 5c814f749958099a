import fc from 'fast-check'
import { expect, test } from 'vitest'
import { mostCorrect } from '@/lib/calc/panel/most-correct'
import { similarity } from '@/lib/calc/panel/similarity'

test('by exact limits it is similar just when no more are right than is allowed', () => {
  const asked = fc.record({
    test: fc.constantFrom('triangle', 'duo-trio', 'paired', 'three-afc'),
    tasters: fc.integer({ min: 5, max: 200 }),
    marginShare: fc.double({ min: 0.05, max: 0.6, noNaN: true }),
    confidence: fc.constantFrom(0.8, 0.9, 0.95, 0.99),
  })
  fc.assert(
    fc.property(asked, (q) => {
      const most = mostCorrect(q) ?? -1
      const similar = (correct: number) => similarity({ ...q, correct, method: 'exact' }).similar
      if (most >= 0) expect(similar(most)).toBe(true)
      if (most < q.tasters) expect(similar(most + 1)).toBe(false)
    }),
  )
})

test('a difference that was not found is not similarity: six tasters at chance show nothing', () => {
  expect(
    similarity({ test: 'triangle', tasters: 6, correct: 2, marginShare: 0.3, confidence: 0.95, method: 'exact' }),
  ).toMatchObject({
    similar: false,
    warnings: ['few-tasters'],
  })
})

test('a margin that is a percentage, none, and a confidence of one are refused', () => {
  const asked = {
    test: 'triangle',
    tasters: 60,
    correct: 20,
    marginShare: 0.3,
    confidence: 0.95,
    method: 'exact',
  } as const
  expect(() => similarity({ ...asked, marginShare: 30 })).toThrow('marginShare')
  expect(() => similarity({ ...asked, marginShare: 0 })).toThrow('marginShare')
  expect(() => similarity({ ...asked, confidence: 1 })).toThrow('confidence')
})
