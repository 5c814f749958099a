import { describe, expect, it } from 'vitest'
import { isSameWork } from '@/lib/kitchen/trials/same-work'
import type { TrialContent } from '@/lib/kitchen/trials/trial-content.input'

const [formulaId, measureId, maltId, flourId] = ['1', '2', '3', '4'].map(
  (digit) => `00000000-0000-4000-8000-00000000000${digit}`,
) as [string, string, string, string]

const content: TrialContent = {
  kind: 'gain',
  question: 'Does malt raise the tin loaf?',
  formulaId,
  measureId,
  margin: 3,
  marginUnit: 'pct',
  confidencePct: 95,
  holdsFor: 'any_day',
  blinded: ['measuring'],
  mixingDays: 2,
  batchesPerArm: 2,
  piecesPerBatch: 4,
  factor: { name: 'Storage', levels: ['day 1', 'day 3'] },
  heldTotals: ['water', 'salt'],
  scaleId: null,
  mixerId: null,
  flourTempC: 20,
  roomTempC: 22,
  tapTempC: null,
  note: '',
  arms: [
    {
      name: 'With malt',
      onTop: false,
      doses: [
        {
          ingredientId: maltId,
          basis: 'pct_flour',
          doseOf: 'product',
          value: 0.5,
          how: 'more',
          insteadOfId: null,
          allOfIt: false,
          equalBy: null,
        },
      ],
    },
  ],
}
const [arm] = content.arms as [TrialContent['arms'][number]]
const [dose] = arm.doses as [(typeof arm.doses)[number]]
const withDose = (changed: Partial<typeof dose>): TrialContent => ({
  ...content,
  arms: [{ ...arm, doses: [{ ...dose, ...changed }] }],
})

describe('whether two drafts ask for the same work', () => {
  it.each<[string, TrialContent]>([
    ['the very same', structuredClone(content)],
    ['another question', { ...content, question: 'Is the loaf higher?' }],
    ['another note', { ...content, note: 'Ask the mill.' }],
    ['another name of a dough', { ...content, arms: [{ ...arm, name: 'Malted' }] }],
    ['another name of what is set apart', { ...content, factor: { name: 'Age', levels: ['day 1', 'day 3'] } }],
    ['totals named in another order', { ...content, heldTotals: ['salt', 'water'] }],
  ])('%s: yes', (_, other) => expect(isSameWork(content, other)).toBe(true))

  it.each<[string, TrialContent]>([
    ['another formula', { ...content, formulaId: flourId }],
    ['another measure', { ...content, measureId: flourId }],
    ['another margin', { ...content, margin: 4 }],
    ['another confidence', { ...content, confidencePct: 90 }],
    ['said of these days', { ...content, holdsFor: 'these_days' }],
    ['nobody blinded', { ...content, blinded: [] }],
    ['more days', { ...content, mixingDays: 3 }],
    ['more doughs', { ...content, batchesPerArm: 3 }],
    ['other levels', { ...content, factor: { name: 'Storage', levels: ['day 1', 'day 5'] } }],
    ['nothing set apart', { ...content, factor: null }],
    ['another total held', { ...content, heldTotals: ['water'] }],
    ['another scale', { ...content, scaleId: flourId }],
    ['warmer flour', { ...content, flourTempC: 21 }],
    ['a tap of its own', { ...content, tapTempC: 12 }],
    ['another dose', withDose({ value: 0.6 })],
    ['another ingredient', withDose({ ingredientId: flourId })],
    ['in place of another', withDose({ how: 'in_place', insteadOfId: flourId, equalBy: 'mass' })],
    ['on top', { ...content, arms: [{ ...arm, onTop: true }] }],
    ['a dough more', { ...content, arms: [arm, { ...arm, name: 'Twice' }] }],
  ])('%s: no', (_, other) => {
    expect(isSameWork(content, other)).toBe(false)
    expect(isSameWork(other, content)).toBe(false)
  })
})
