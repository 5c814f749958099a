import fc from 'fast-check'
import { v7 as uuid } from 'uuid'
import { describe, expect, it } from 'vitest'
import { noLooks } from '@/lib/kitchen/steps/looks.input'
import type { Floor, FloorInstrument } from '@/lib/station/keep/facts'
import { checksOfDay } from '@/lib/station/outbox/checks-of-day'
import type { EntryOf } from '@/lib/station/outbox/entry'
import { standardOf } from '@/lib/station/outbox/standard-of'
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
  blockMl: null,
  volumeMl: null,
  offMost: 1,
  last: null,
}
const floor = (instruments: FloorInstrument[], q: { fetchedAt?: number; aheadMs?: number } = {}) => {
  const { fetchedAt = six + hour, aheadMs = 0 } = q
  const value: Floor = {
    now: new Date(fetchedAt).toISOString(),
    temperatureUnit: '°C',
    looks: noLooks,
    doughs: [],
    next: [],
    out: [],
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
const lastAt = (at: number, isGood = true) => ({
  ...scale,
  last: { at: new Date(at).toISOString(), isGood, offMl: null },
})
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

  it('are asked for anew on every day that a tablet has been without a network', () => {
    const of = floor([scale])
    expect(checksOfDay(of, [kept(six + 25 * hour)], six + 47 * hour)).toMatchObject([{ stand: 'good' }])
    expect(checksOfDay(of, [kept(six + 25 * hour)], six + 48 * hour)).toMatchObject([{ stand: 'toDo', at: null }])
  })

  it('say by how much a gauge was off in its last check, by the book’s word or the tablet’s own', () => {
    const gauge = { ...scale, kind: 'volume_gauge' as const, last: null }
    const last = { at: new Date(six - hour).toISOString(), isGood: true, offMl: 12 }
    const own = kept(six + hour)
    const typed = { ...own, payload: { ...own.payload, block: '1000', shown: '990.5', unit: 'mL' } }
    const offOf = (of: FloorInstrument, entries: EntryOf<'check'>[]) =>
      checksOfDay(floor([of]), entries, six + 2 * hour).map(({ offMl }) => offMl)
    expect(offOf(gauge, [])).toEqual([null])
    expect(offOf({ ...gauge, last }, [])).toEqual([12])
    expect(offOf({ ...gauge, last }, [typed])).toEqual([-9.5])
    expect(offOf(scale, [own])).toEqual([null])
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
      { ...scale, known: '1000', shown: '999', unit: 'g' },
      { off: -1, isGood: true, most: 1 },
    ],
    ['a scale beyond it', { ...scale, known: '500', shown: '502', unit: 'g' }, { off: 2, isGood: false, most: 1 }],
  ])('is judged as the book does it: %s', (_, check, expected) => {
    expect(judgeCheck(check)).toEqual(expected)
  })

  it.each([
    ['within what the bakery says', 5, '1005', { off: 5, isGood: true, most: 5 }],
    ['beyond it', 5, '994', { off: -6, isGood: false, most: 5 }],
    ['within a share of the block that was typed', null, '1020', { off: 20, isGood: true, most: 20 }],
    ['beyond it', null, '1020.1', { off: 20.1, isGood: false, most: 20 }],
  ])('of a volume gauge is judged as the book does it: %s', (_, offMost, shown, expected) => {
    expect(judgeCheck({ kind: 'volume_gauge', offMost, known: '1000', shown, unit: 'mL' })).toEqual(expected)
  })

  it('is made with what the bakery has said, of a thermometer with ice', () => {
    expect(standardOf(scale)).toEqual({ known: 1000, most: 5000 })
    const gauge = {
      ...scale,
      kind: 'volume_gauge' as const,
      testMassG: null,
      mostG: null,
      blockMl: null,
      volumeMl: 3000,
    }
    expect(standardOf(gauge)).toEqual({ known: null, most: 3000 })
    expect(standardOf({ ...gauge, blockMl: 1500 })).toEqual({ known: 1500, most: 3000 })
    expect(standardOf({ ...gauge, kind: 'thermometer' })).toBeNull()
  })

  it('of a thermometer is judged in the unit that it shows', () => {
    const probe = { kind: 'thermometer' as const, offMost: 0.5, known: null }
    expect(judgeCheck({ ...probe, shown: '0.5', unit: '°C' })).toEqual({ off: 0.5, isGood: true, most: 0.5 })
    const warm = judgeCheck({ ...probe, shown: '32.9', unit: '°F' })
    expect(warm.isGood).toBe(true)
    expect(warm.most).toBeCloseTo(0.9, 9)
    expect(judgeCheck({ ...probe, shown: '33', unit: '°F' }).isGood).toBe(false)
    expect(judgeCheck({ ...probe, shown: '0', unit: '°F' }).off).toBeCloseTo(-32, 5)
  })
})
