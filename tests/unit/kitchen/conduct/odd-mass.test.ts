import { expect, it } from 'vitest'
import { isOddMass } from '@/lib/kitchen/conduct/odd-mass'

it('is a mass that none of the doughs could have: grams for kilograms, or the other way', () => {
  expect(isOddMass(0.612, [612, 600])).toBe(true)
  expect(isOddMass(612_000, [612, 600])).toBe(true)
  expect(isOddMass(12_000, [0, 12])).toBe(true)
})

it('is none that any of them could have, and nothing at all is none', () => {
  for (const massG of [0, 0.2, 4, 12, 36]) expect(isOddMass(massG, [0, 12])).toBe(false)
  expect(isOddMass(36.1, [0, 12])).toBe(true)
  expect(isOddMass(6, [600, 12])).toBe(false)
})
