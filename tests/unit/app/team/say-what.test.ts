import { expect, it } from 'vitest'
import { sayWhat } from '@/app/(desk)/team/record/say-what'
import { wordsIn } from '@/lib/words/words'

const said = (action: string, who: Parameters<typeof sayWhat>[1]) => sayWhat(action, who, wordsIn('en'))
const ines = { person: '01a22670-acdf-7245-8e73-20aacb3b511c', name: 'Ines Farrow', role: 'shift_baker' }
const bench = { kind: 'station', station: '01a22670-d001-7a10-8c3f-4f0e9d2b6a55', name: 'Bench by the mixer' } as const
const taster = { kind: 'taster', panel: '01a22670-e2aa-7c31-9b1e-0a6d1c7f2e90', code: '417' } as const

it('a refusal speaks of a role only where somebody with one was refused', () => {
  const byRole = 'asked for what their role does not allow'
  expect(said('refused.right', { kind: 'desk', ...ines })).toBe(byRole)
  expect(said('refused.right', { ...bench, person: ines })).toBe(byRole)
  for (const who of [{ ...bench, person: null }, taster, { kind: 'job', job: 'check-records' } as const])
    expect(said('refused.right', who)).not.toMatch(/role|their/)
})

it('what else was done is said alike of every caller, and an action without words as it stands there', () => {
  expect(said('stores.add-ingredient', taster)).toBe(said('stores.add-ingredient', { kind: 'desk', ...ines }))
  for (const action of ['pantry.add-shelf', 'toString']) expect(said(action, null)).toBe(action)
})
