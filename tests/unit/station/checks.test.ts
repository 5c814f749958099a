import fc from 'fast-check'
import { v7 as uuid } from 'uuid'
import { describe, expect, it } from 'vitest'
import type { Floor, FloorInstrument } from '@/lib/station/keep/facts'
import { checksOfDay } from '@/lib/station/outbox/checks-of-day'
import type { EntryOf } from '@/lib/station/outbox/entry'
import { judgeCheck } from '@/lib/station/outbox/judge-check'

const hour = 3_600_000
/** Six in the morning by the book, when the day turns. */
const six = Date.UTC(2026, 2, 1, 6)
const scale: FloorInstrument = {
  id: 'bench',
  name: 'Bench scale',
  kind: 'scale',
  testMassG: 1000,
  mostG: 5000,
  offMost: 1,
  last: null,
}
const floor = (instruments: FloorInstrument[], q: { fetchedAt?: number; aheadMs?: number } = {}) => {
  const { fetchedAt = six + hour, aheadMs = 0 } = q
  const value: Floor = {
    now: new Date(fetchedAt).toISOString(),
    temperatureUnit: '°C',
    doughs: [],
    next: [],
    isCut: false,
    notes: [],
    day: { beganAt: new Date(six).toISOString(), endsAt: new Date(six + 24 * hour).toISOString() },
    instruments,
  }
  return { value, at: fetchedAt - aheadMs }
}
const kept = (takenAt: number, more: Partial<EntryOf<'check'>> & { clockAheadS?: number | null } = {}) => {
  const { clockAheadS = 0, ...rest } = more
  const id = uuid()
  const entry: EntryOf<'check'> = {
    format: 1,
    id,
    schema: 1,
    hash: '',
    counter: 1,
    stationId: 's',
    personId: 'esi',
    personName: 'Esi',
    shiftToken: '',
    state: 'waiting',
    refusal: null,
    words: null,
    settledAt: null,
    kind: 'check',
    payload: {
      id,
      equipmentId: 'bench',
      mass: null,
      shown: '1000',
      unit: 'g',
      clockAheadS,
      takenAt: new Date(takenAt).toISOString(),
    },
    shown: { instrument: 'Bench scale', isGood: true },
    ...rest,
  }
  return entry
}
const lastAt = (at: number, isGood = true) => ({ ...scale, last: { at: new Date(at).toISOString(), isGood } })
const failing = { shown: { instrument: 'Bench scale', isGood: false } }

describe('the checks of a day, on a tablet', () => {
  it.each([
    ['nobody checked it', floor([scale]), [], 'toDo'],
    ['it was checked yesterday', floor([lastAt(six - 1)]), [], 'toDo'],
    ['it was checked at the turn', floor([lastAt(six)]), [], 'good'],
    ['it failed', floor([lastAt(six + 1, false)]), [], 'failed'],
    ['this tablet has checked it, and nothing is sent', floor([scale]), [kept(six + hour)], 'good'],
    ['this tablet checked it yesterday', floor([scale]), [kept(six - hour)], 'toDo'],
    ['the book refused what this tablet kept', floor([scale]), [kept(six + hour, { state: 'attention' })], 'toDo'],
    ['it failed here after it was good elsewhere', floor([lastAt(six + 1)]), [kept(six + hour, failing)], 'failed'],
    ['it was good after it failed', floor([lastAt(six + 1, false)]), [kept(six + hour)], 'good'],
    ['two of one moment do not agree', floor([lastAt(six + hour, false)]), [kept(six + hour)], 'failed'],
    [
      'another one was checked',
      floor([scale]),
      [{ ...kept(six + hour), payload: { ...kept(0).payload, equipmentId: 'dose' } }],
      'toDo',
    ],
  ] as const)('stand as they do where %s', (_, of, entries, stand) => {
    expect(checksOfDay(of, entries, six + 2 * hour)).toMatchObject([{ id: 'bench', stand }])
  })

  it('are asked for anew when the day turns, without a network too', () => {
    const of = floor([lastAt(six + hour)])
    expect(checksOfDay(of, [], six + 24 * hour - 1)).toMatchObject([{ stand: 'good' }])
    expect(checksOfDay(of, [], six + 24 * hour)).toMatchObject([{ stand: 'toDo', at: null }])
    expect(checksOfDay(of, [kept(six + 25 * hour)], six + 26 * hour)).toMatchObject([{ stand: 'good' }])
  })

  it('do not hang on how wrong the tablet’s clock is, nor on when it was set', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -48, max: 48 }),
        fc.integer({ min: -48, max: 48 }),
        fc.integer({ min: -30, max: 30 }),
        (aheadH, aheadThenH, atH) => {
          const of = floor([scale], { aheadMs: aheadH * hour })
          const at = six + atH * hour
          const entry = kept(at - aheadThenH * hour, { clockAheadS: aheadThenH * 3600 })
          const [check] = checksOfDay(of, [entry], six + 2 * hour - aheadH * hour)
          expect(check?.stand).toBe(at >= six ? 'good' : 'toDo')
        },
      ),
      { seed: 84 },
    )
  })
})

describe('a check that is typed', () => {
  it.each([
    [
      'a scale within its step',
      { ...scale, mass: '1000', shown: '999', unit: 'g' },
      { off: -1, isGood: true, most: 1 },
    ],
    ['a scale beyond it', { ...scale, mass: '500', shown: '502', unit: 'g' }, { off: 2, isGood: false, most: 1 }],
  ])('is judged as the book does it: %s', (_, check, expected) => {
    expect(judgeCheck(check)).toEqual(expected)
  })

  it('of a thermometer is judged in the unit that it shows', () => {
    const probe = { kind: 'thermometer' as const, offMost: 0.5, mass: null }
    expect(judgeCheck({ ...probe, shown: '0.5', unit: '°C' })).toEqual({ off: 0.5, isGood: true, most: 0.5 })
    const warm = judgeCheck({ ...probe, shown: '32.9', unit: '°F' })
    expect(warm.isGood).toBe(true)
    expect(warm.most).toBeCloseTo(0.9, 9)
    expect(judgeCheck({ ...probe, shown: '33', unit: '°F' }).isGood).toBe(false)
    expect(judgeCheck({ ...probe, shown: '0', unit: '°F' }).off).toBeCloseTo(-32, 5)
  })
})
