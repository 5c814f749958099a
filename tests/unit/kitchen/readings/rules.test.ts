import { expect, it } from 'vitest'
import { mayCorrect } from '@/lib/kitchen/readings/rules'

const timeZone = 'Europe/Berlin'
// 06:00 in Berlin.
const takenAt = new Date('2026-03-02T05:00:00Z')
const may = (level: 'yes' | 'no' | 'own-same-shift' | 'in-part', now: string, personId = 'esi') =>
  mayCorrect({ level, personId, reading: { personId: 'esi', takenAt }, now: new Date(now), timeZone })

it('whoever has the right whole corrects any reading at any time', () => {
  expect(may('yes', '2026-05-02T05:00:00Z', 'henk')).toBe(true)
})

it('a shift baker corrects their own within twelve hours', () => {
  expect(may('own-same-shift', '2026-03-02T17:00:00Z')).toBe(true)
  expect(may('own-same-shift', '2026-03-02T17:00:01Z')).toBe(false)
  expect(may('own-same-shift', '2026-03-02T05:01:00Z', 'lars')).toBe(false)
})

it('and not beyond the day in the bakery’s zone', () => {
  const late = { personId: 'esi', takenAt: new Date('2026-03-02T20:00:00Z') }
  const at = (now: string, zone: string) => mayCorrect({ level: 'own-same-shift', personId: 'esi', reading: late, now: new Date(now), timeZone: zone })
  // Midnight in Berlin is 23:00 UTC; in New York it is still the same day.
  expect(at('2026-03-02T22:59:59Z', timeZone)).toBe(true)
  expect(at('2026-03-02T23:00:00Z', timeZone)).toBe(false)
  expect(at('2026-03-02T23:00:00Z', 'America/New_York')).toBe(true)
})

it('rights that are not known here correct nothing', () => {
  expect(may('no', '2026-03-02T05:01:00Z')).toBe(false)
  expect(may('in-part', '2026-03-02T05:01:00Z')).toBe(false)
})
