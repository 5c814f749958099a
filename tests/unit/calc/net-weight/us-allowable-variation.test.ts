import { expect, test } from 'vitest'
import { usAllowableVariationG } from '@/lib/calc/net-weight/us-allowable-variation'

test('it says that the table is from memory', () =>
  expect(usAllowableVariationG({ labelledG: 400 }).cautions).toContain('from-memory-check-handbook'))

test('a step of the table belongs to the weights up to it', () => {
  expect(usAllowableVariationG({ labelledG: 426 }).variationG).toBe(18.1)
  expect(usAllowableVariationG({ labelledG: 426.1 }).variationG).toBe(19.9)
})

test.each([317, 970.1, Number.NaN])('%d g is beyond the part that is here', (labelledG) =>
  expect(() => usAllowableVariationG({ labelledG })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'labelledG' }) }),
  ))
