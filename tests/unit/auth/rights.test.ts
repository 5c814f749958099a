import { describe, expect, it } from 'vitest'
import { levelOf, mayTry, rights, type Party, type Right } from '@/lib/auth/rights'

// The table of who may do what, written out again by hand: right, owner, head baker, shift baker, taster, at a station.
const expected: [Right, string, string, string, string, boolean][] = [
  ['propose-trial', 'yes', 'yes', 'yes', 'no', false],
  ['approve-plan', 'yes', 'yes', 'no', 'no', false],
  ['log-reading', 'yes', 'yes', 'yes', 'no', true],
  ['correct-reading', 'yes', 'yes', 'own-same-shift', 'no', true],
  ['import-readings', 'yes', 'yes', 'no', 'no', false],
  ['see-costs', 'yes', 'yes', 'no', 'no', false],
  ['edit-stores', 'yes', 'yes', 'no', 'no', false],
  ['draft-formula', 'yes', 'yes', 'no', 'no', false],
  ['sign-off-formula', 'yes', 'yes', 'no', 'no', false],
  ['manage-people', 'yes', 'in-part', 'no', 'no', false],
  ['change-settings', 'yes', 'no', 'no', 'no', false],
  ['taste', 'yes', 'yes', 'yes', 'yes', true],
  ['read-work', 'yes', 'yes', 'yes', 'no', true],
  ['read-record', 'yes', 'yes', 'no', 'no', false],
  ['own-account', 'yes', 'yes', 'yes', 'no', false],
]
const parties: Party[] = ['owner', 'head_baker', 'shift_baker', 'taster']

describe('who may do what', () => {
  it('knows every right of the table and no other', () => {
    expect(Object.keys(rights).sort()).toEqual(expected.map(([right]) => right).sort())
  })

  for (const [right, ...cells] of expected) {
    for (const [at, party] of parties.entries()) {
      it(`${party} and ${right}: ${String(cells[at])}`, () => {
        expect(levelOf(party, right)).toBe(cells[at])
        expect(mayTry(party, right, 'desk')).toBe(cells[at] !== 'no')
        expect(mayTry(party, right, 'station')).toBe(cells[at] !== 'no' && cells[4])
      })
    }
  }

  it('refuses a right or a role that it does not know', () => {
    expect(mayTry('owner', 'everything' as Right, 'desk')).toBe(false)
    expect(mayTry('admin' as Party, 'see-costs', 'desk')).toBe(false)
  })
})
