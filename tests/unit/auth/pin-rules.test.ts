import { expect, test } from 'vitest'
import { isSimplePin, pinLength } from '@/lib/auth/pin-rules'

test('of all PINs few are refused, so that guessing is hardly made easier by knowing which', () => {
  let refused = 0
  const all = 10 ** pinLength
  for (let i = 0; i < all; i++) if (isSimplePin(String(i).padStart(pinLength, '0'))) refused++
  // A hundred years at either end of a hundred others are two in a hundred; the patterns are a thousand and some.
  expect(refused / all).toBeGreaterThan(0.02)
  expect(refused / all).toBeLessThan(0.023)
})
