import { expect, test } from 'vitest'
import { usAllowableVariationG } from '@/lib/calc/net-weight/us-allowable-variation'

test('it says that the table is from memory', () =>
  expect(usAllowableVariationG({ labelledG: 400 }).cautions).toContain('from-memory-check-handbook'))

test('a step of the table belongs to the weights up to it', () => {
  expect(usAllowableVariationG({ labelledG: 426 }).variationG).toBe(18.1)
  expect(usAllowableVariationG({ labelledG: 426.4 }).variationG).toBe(19.9)
  expect(usAllowableVariationG({ labelledG: 30 }).variationG).toBe(3)
})

test.each([0, 2631, Number.NaN])('%d g is beyond the table', (labelledG) =>
  expect(() => usAllowableVariationG({ labelledG })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'labelledG' }) }),
  ),
)
