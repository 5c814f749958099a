import fc from 'fast-check'
import { expect, test } from 'vitest'
import { declaredAllergens } from '@/lib/calc/label/declared-allergens'
import { ALLERGENS } from '@/lib/calc/label/types'
import { usAllergenWords } from '@/lib/calc/label/us-allergen-words'

const words = (present: (typeof ALLERGENS)[number][]) =>
  usAllergenWords(declaredAllergens({ present, region: 'us' }).declared.map((one) => ({ ...one, species: null })))

test('whatever else is in it, a declared allergen has its word, each once', () =>
  fc.assert(
    fc.property(fc.subarray([...ALLERGENS]), (present) => {
      const all = words(present)
      for (const one of present) for (const word of words([one])) expect(all).toContain(word)
      expect(new Set(all).size).toBe(all.length)
    }),
  ))

test('fish and shellfish by their kind, nuts by name, wheat for spelt', () => {
  const declared = [
    { group: 'fish', named: 'fish', species: 'anchovy' },
    { group: 'fish', named: 'fish', species: 'Anchovy' },
    { group: 'crustaceans', named: 'crustaceans', species: 'shrimp' },
    { group: 'nuts', named: 'brazil-nuts', species: null },
    { group: 'wheat', named: 'spelt', species: null },
    { group: 'wheat', named: 'wheat', species: null },
  ] as const
  expect(usAllergenWords(declared)).toEqual(['Anchovy', 'shrimp', 'brazil nuts', 'wheat'])
  expect(words(['fish', 'crustaceans'])).toEqual(['fish', 'crustacean shellfish'])
})

test('a group that the United States do not list is refused, not left out', () =>
  expect(() => usAllergenWords([{ group: 'lupin', named: 'lupin', species: null }])).toThrow(
    expect.objectContaining({ code: 'out-of-range' }),
  ))
