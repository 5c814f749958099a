import { expect, it } from 'vitest'
import { mayCorrect } from '@/lib/kitchen/readings/rules'

const takenAt = new Date('2026-03-02T05:00:00Z')
const may = (level: 'yes' | 'no' | 'own-same-shift' | 'in-part', now: string, personId = 'esi') =>
  mayCorrect({ level, personId, reading: { personId: 'esi', takenAt }, now: new Date(now) })

it('whoever has the right whole corrects any reading at any time', () => {
  expect(may('yes', '2026-05-02T05:00:00Z', 'henk')).toBe(true)
})

it('a shift baker corrects their own within twelve hours', () => {
  expect(may('own-same-shift', '2026-03-02T17:00:00Z')).toBe(true)
  expect(may('own-same-shift', '2026-03-02T17:00:01Z')).toBe(false)
  expect(may('own-same-shift', '2026-03-02T05:01:00Z', 'lars')).toBe(false)
})

it('and through midnight, in whatever zone', () => {
  const late = { personId: 'esi', takenAt: new Date('2026-03-02T22:50:00Z') }
  expect(mayCorrect({ level: 'own-same-shift', personId: 'esi', reading: late, now: new Date('2026-03-03T05:00:00Z') })).toBe(true)
})

it('rights that are not known here correct nothing', () => {
  expect(may('no', '2026-03-02T05:01:00Z')).toBe(false)
  expect(may('in-part', '2026-03-02T05:01:00Z')).toBe(false)
})
