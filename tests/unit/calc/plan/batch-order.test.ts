import fc from 'fast-check'
import { expect, test } from 'vitest'
import { batchOrder } from '@/lib/calc/plan/batch-order'
import { forLong } from '@/tests/support/long'

const arms = [
  { arm: 'control', batchesPerBlock: 2, addedAllergens: [] },
  { arm: 'b', batchesPerBlock: 1, addedAllergens: ['milk'] },
  { arm: 'c', batchesPerBlock: 1, addedAllergens: [] },
  { arm: 'd', batchesPerBlock: 1, addedAllergens: ['milk', 'sesame'] },
  { arm: 'e', batchesPerBlock: 1, addedAllergens: ['soya'] },
]
const blocks = ['Mon', 'Tue', 'Wed']

test('every block holds every arm with its number of batches, places counted through', () => {
  const { batches } = batchOrder({ seed: 's', blocks, arms })
  for (const block of blocks) {
    const own = batches.filter((batch) => batch.block === block)
    expect(own.map((batch) => batch.place)).toEqual([1, 2, 3, 4, 5, 6])
    for (const { arm, batchesPerBlock } of arms) {
      expect(own.filter((batch) => batch.arm === arm).map((batch) => batch.copy)).toEqual(
        Array.from({ length: batchesPerBlock }, (_, i) => i + 1),
      )
    }
  }
})

test('whatever the seed, no dough follows an allergen it lacks without a clean-down, and none without allergens follows one', () => {
  const added = new Map(arms.map(({ arm, addedAllergens }) => [arm, addedAllergens]))
  fc.assert(
    fc.property(fc.string(), (seed) => {
      for (const block of blocks) {
        let about = new Set<string>()
        for (const batch of batchOrder({ seed, blocks, arms }).batches.filter((b) => b.block === block)) {
          const own = added.get(batch.arm)!
          if (own.length === 0) expect(about.size).toBe(0)
          about = new Set([...about].filter((allergen) => !batch.cleanDownOf.includes(allergen)))
          expect([...about].every((allergen) => own.includes(allergen))).toBe(true)
          own.forEach((allergen) => about.add(allergen))
        }
      }
    }),
    { seed: 7, numRuns: forLong(50, 1_000) },
  )
})

test('the same seed gives the same order, another seed another', () => {
  const order = (seed: string) =>
    batchOrder({ seed, blocks, arms })
      .batches.map((batch) => batch.arm)
      .join(' ')
  expect(order('a')).toBe(order('a'))
  expect(order('a')).not.toBe(order('b'))
})

test('within a step every order comes equally often', () => {
  const plain = ['x', 'y', 'z'].map((arm) => ({ arm, batchesPerBlock: 1, addedAllergens: [] }))
  const seen = new Map<string, number>()
  const many = Array.from({ length: 12_000 }, (_, i) => String(i))
  const { batches, warnings } = batchOrder({ seed: 'orders', blocks: many, arms: plain })
  for (let i = 0; i < batches.length; i += 3) {
    const order = batches
      .slice(i, i + 3)
      .map((batch) => batch.arm)
      .join('')
    seen.set(order, (seen.get(order) ?? 0) + 1)
  }
  const chiSquared = [...seen.values()].reduce((sum, count) => sum + (count - 2000) ** 2 / 2000, 0)
  expect(seen.size).toBe(6)
  expect(chiSquared).toBeLessThan(20.52) // upper 0.001 point, 5 df
  expect(warnings).toEqual([])
})

test('a place that hangs on an allergen is said; names twice and parts of batches are refused', () => {
  expect(batchOrder({ seed: 's', blocks, arms }).warnings).toEqual(['place-tied-to-allergen'])
  expect(() => batchOrder({ seed: 's', blocks: ['Mon', 'Mon'], arms })).toThrow('duplicate')
  expect(() => batchOrder({ seed: 's', blocks, arms: [arms[0]!, arms[0]!] })).toThrow('duplicate')
  expect(() => batchOrder({ seed: 's', blocks, arms: [{ ...arms[0]!, batchesPerBlock: 1.5 }] })).toThrow('not-whole')
})
