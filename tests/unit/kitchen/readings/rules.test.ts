import { expect, it } from 'vitest'
import { levelOfPiece, mayCorrect, timeFault } from '@/lib/kitchen/readings/rules'

const takenAt = new Date('2026-03-02T05:00:00Z')
const receivedAt = new Date('2026-03-02T05:30:00Z')
const may = (level: 'yes' | 'no' | 'own-same-shift' | 'in-part', now: string, personId = 'esi') =>
  mayCorrect({ level, personId, reading: { personId: 'esi', takenAt, receivedAt }, now: new Date(now) })

it('whoever has the right whole corrects any reading at any time', () => {
  expect(may('yes', '2026-05-02T05:00:00Z', 'henk')).toBe(true)
})

it('a shift baker corrects their own within twelve hours', () => {
  expect(may('own-same-shift', '2026-03-02T17:00:00Z')).toBe(true)
  expect(may('own-same-shift', '2026-03-02T17:00:01Z')).toBe(false)
  expect(may('own-same-shift', '2026-03-02T05:01:00Z', 'lars')).toBe(false)
})

it('and through midnight, in whatever zone', () => {
  const late = {
    personId: 'esi',
    takenAt: new Date('2026-03-02T22:50:00Z'),
    receivedAt: new Date('2026-03-02T22:50:00Z'),
  }
  expect(
    mayCorrect({ level: 'own-same-shift', personId: 'esi', reading: late, now: new Date('2026-03-03T05:00:00Z') }),
  ).toBe(true)
})

it('and no longer by a clock that runs ahead', () => {
  const ahead = { personId: 'esi', takenAt: new Date('2026-03-09T05:00:00Z'), receivedAt }
  const atNow = (now: string) =>
    mayCorrect({ level: 'own-same-shift', personId: 'esi', reading: ahead, now: new Date(now) })
  expect(atNow('2026-03-02T17:30:00Z')).toBe(true)
  expect(atNow('2026-03-02T17:30:01Z')).toBe(false)
  expect(atNow('2026-03-09T05:00:00Z')).toBe(false)
})

it('rights that are not known here correct nothing', () => {
  expect(may('no', '2026-03-02T05:01:00Z')).toBe(false)
  expect(may('in-part', '2026-03-02T05:01:00Z')).toBe(false)
})

it('the pieces of a dough take the levels in turn, and none where there are none', () => {
  expect([1, 2, 3, 4, 5, 6].map((piece) => levelOfPiece(piece, ['180', '200', '220']))).toEqual([
    '180',
    '200',
    '220',
    '180',
    '200',
    '220',
  ])
  expect(levelOfPiece(1, [])).toBeNull()
})

it('a time of a file is at fault from a day ahead of the clock on, and from a day before the trial', () => {
  const [now, created] = [new Date('2026-03-10T04:00:00Z'), new Date('2026-03-02T04:00:00Z')]
  expect(timeFault(new Date('2026-03-11T04:00:00Z'), now, created)).toBeNull()
  expect(timeFault(new Date('2026-03-11T04:00:01Z'), now, created)).toBe('in-the-future')
  expect(timeFault(new Date('2026-03-01T04:00:00Z'), now, created)).toBeNull()
  expect(timeFault(new Date('2026-03-01T03:59:59Z'), now, created)).toBe('before-the-trial')
})
