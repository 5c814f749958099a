import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  decidesAs,
  slipNeeds,
  slipSignsAs,
  type PersonThere,
  type SlipSigns,
} from '@/lib/kitchen/amendments/second-person'

const olga: PersonThere = { id: 'olga', role: 'owner' }
const oren: PersonThere = { id: 'oren', role: 'owner' }
const henk: PersonThere = { id: 'henk', role: 'head_baker' }
const esi: PersonThere = { id: 'esi', role: 'shift_baker' }
const lars: PersonThere = { id: 'lars', role: 'shift_baker' }

describe('who says yes or no to an amendment', () => {
  it.each([
    ['owner of a baker’s', olga, esi, [olga, henk, esi], { as: 'second_person' }],
    ['head baker of the owner’s', henk, olga, [olga, henk, esi], { as: 'second_person' }],
    ['nobody of their own', henk, henk, [olga, henk, esi], { bar: 'own-amendment' }],
    ['no baker, where there is a head baker', esi, olga, [olga, henk, esi], { bar: 'not-allowed' }],
    ['no baker of another baker’s', lars, esi, [olga, esi, lars], { bar: 'not-allowed' }],
    ['any baker as a witness, where the owner is both', esi, olga, [olga, esi, lars], { as: 'witness' }],
    ['another owner, where there is one', oren, olga, [olga, oren, esi], { as: 'second_person' }],
    ['who is alone, alone', olga, olga, [olga], { as: 'alone' }],
    ['who is alone now, of somebody’s who left', olga, esi, [olga], { as: 'second_person' }],
  ] as const)('%s', (_, person, proposer, people, expected) => {
    expect(decidesAs({ person, proposedById: proposer.id, people })).toEqual(expected)
  })

  it('is never who proposed it, unless nobody else is there; and somebody always may', () => {
    const crews = fc
      .array(fc.constantFrom('owner', 'head_baker', 'shift_baker'), { maxLength: 4 })
      .map((roles) => ['owner' as const, ...roles].map((role, at): PersonThere => ({ id: `p${at}`, role })))
    fc.assert(
      fc.property(crews, fc.nat(), (people, nth) => {
        const proposer = people[nth % people.length]!
        const may = people.filter((person) => 'as' in decidesAs({ person, proposedById: proposer.id, people }))
        expect(may.length).toBeGreaterThan(0)
        expect(may.some(({ id }) => id === proposer.id)).toBe(people.length === 1)
      }),
    )
  })
})

describe('who signs that the first result rested on a slip', () => {
  it('is owner and head baker, the owner and any second baker, or who is alone', () => {
    expect(slipNeeds([olga, henk, esi])).toEqual(['owner', 'head_baker'])
    expect(slipNeeds([olga, esi])).toEqual(['owner', 'witness'])
    expect(slipNeeds([olga])).toEqual(['alone'])
  })

  it('takes two different people, in either order, unless somebody is alone', () => {
    const given = [{ personId: 'henk', as: 'head_baker' as const }]
    const people = [olga, henk, esi]
    expect(slipSignsAs({ person: henk, people, given: [] })).toEqual({ as: 'head_baker', isLast: false })
    expect(slipSignsAs({ person: henk, people, given })).toEqual({ bar: 'slip-signed-by-you' })
    expect(slipSignsAs({ person: esi, people, given })).toEqual({ bar: 'not-allowed' })
    expect(slipSignsAs({ person: olga, people, given })).toEqual({ as: 'owner', isLast: true })
    expect(slipSignsAs({ person: olga, people: [olga], given: [] })).toEqual({ as: 'alone', isLast: true })
    const byOwner = [{ personId: 'olga', as: 'owner' as const }]
    expect(slipSignsAs({ person: oren, people: [olga, oren], given: byOwner })).toEqual({ as: 'witness', isLast: true })
  })

  it('always comes to an end, with nobody twice', () => {
    const crews = fc.array(fc.constantFrom('owner', 'head_baker', 'shift_baker'), { maxLength: 4 })
    fc.assert(
      fc.property(crews, (roles) => {
        const people = ['owner' as const, ...roles].map((role, at): PersonThere => ({ id: `p${at}`, role }))
        const given: { personId: string; as: SlipSigns }[] = []
        let isLast = false
        for (const person of [...people, ...people].reverse()) {
          const may: ReturnType<typeof slipSignsAs> | null = isLast ? null : slipSignsAs({ person, people, given })
          if (!may || 'bar' in may) continue
          given.push({ personId: person.id, as: may.as })
          isLast = may.isLast
        }
        expect(isLast).toBe(true)
        expect(new Set(given.map(({ personId }) => personId)).size).toBe(Math.min(people.length, 2))
      }),
    )
  })
})
