import fc from 'fast-check'
import { expect, test } from 'vitest'
import { declaredAllergens } from '@/lib/calc/label/declared-allergens'
import { ALLERGENS, REGIONS, type Allergen } from '@/lib/calc/label/types'

test('nothing that is in the food gets lost: it is declared, or said not to be listed', () =>
  fc.assert(
    fc.property(fc.subarray([...ALLERGENS]), fc.constantFrom(...REGIONS), (present, region) => {
      const { declared, notListed } = declaredAllergens({ present, region })
      expect([...declared.map(({ named }) => named), ...notListed].sort()).toEqual([...present].sort())
    }),
  ))

test('the EU lists everything that is known here', () =>
  expect(declaredAllergens({ present: ALLERGENS, region: 'eu' }).notListed).toEqual([]))

test('it is always a draft, with its cautions, also when there is nothing to declare', () =>
  expect(declaredAllergens({ present: [], region: 'eu' })).toEqual({
    isDraft: true,
    declared: [],
    notListed: [],
    cautions: ['draft-for-competent-person', 'local-rules-decide', 'traces-not-covered', 'milk-most-often-missed'],
  }))

test('one named twice counts once, sulphites bring their limit, and an unknown one is refused', () => {
  const { declared, cautions } = declaredAllergens({ present: ['sulphites', 'sulphites'], region: 'eu' })
  expect(declared).toHaveLength(1)
  expect(cautions).toContain('sulphites-above-10-mg-per-kg')
  expect(() => declaredAllergens({ present: ['kiwi' as Allergen], region: 'eu' })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'present[0]', value: 'kiwi' }) }),
  )
})
