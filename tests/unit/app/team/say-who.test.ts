import { expect, it } from 'vitest'
import { sayWho } from '@/app/(desk)/team/record/say-who'
import { wordsIn } from '@/lib/words/words'

const said = (who: Parameters<typeof sayWho>[0]) => sayWho(who, wordsIn('en'), 'en')
const ines = { person: '01a22670-acdf-7245-8e73-20aacb3b511c', name: 'Ines Farrow', role: 'shift_baker' }
const bench = { kind: 'station', station: '01a22670-d001-7a10-8c3f-4f0e9d2b6a55', name: 'Bench by the mixer' } as const

it('the record says of each kind of caller who it was', () => {
  expect(said({ kind: 'desk', ...ines })).toBe('Ines Farrow, shift baker')
  expect(said({ ...bench, person: ines })).toBe('Ines Farrow, shift baker, at Bench by the mixer')
  expect(said({ ...bench, person: null })).toBe('Bench by the mixer, with nobody on it')
  expect(said({ kind: 'taster', panel: '01a22670-e2aa-7c31-9b1e-0a6d1c7f2e90', code: '417' })).toBe('taster 417')
  expect(said({ kind: 'job', job: 'owner-link' })).toBe('whoever runs this install, on its machine')
  expect(said(null)).toBe('not signed in')
})

it('a role or a job that has no words is given as it stands there', () => {
  expect(said({ kind: 'desk', ...ines, role: 'miller' })).toBe('Ines Farrow, miller')
  expect(said({ kind: 'desk', ...ines, role: 'toString' })).toBe('Ines Farrow, toString')
  expect(said({ kind: 'job', job: 'anchor-record' })).toBe('the install itself: anchor-record')
})
