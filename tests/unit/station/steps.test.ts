import fc from 'fast-check'
import { v7 as uuid } from 'uuid'
import { describe, expect, it } from 'vitest'
import type { FloorDough, FloorStep } from '@/lib/station/keep/facts'
import { clockAheadMs } from '@/lib/station/outbox/clock-ahead'
import type { EntryOf, OutboxEntry } from '@/lib/station/outbox/entry'
import { runningTimers, stepsOfDough, whereaboutsOf } from '@/lib/station/outbox/steps-of-dough'
import { readTyped } from '@/lib/station/outbox/typed-step'
import { inCelsius, inTemperatureUnit } from '@/lib/station/ui/said-of-step'

const noon = Date.UTC(2026, 2, 1, 12)
const hour = 3_600_000
const none = {
  setting: null,
  chamberTempC: null,
  place: null,
  setTempC: null,
  readTempC: null,
  steam: null,
  beside: null,
}
const inBook = (more: Partial<FloorStep> = {}): FloorStep => ({
  ...none,
  id: uuid(),
  step: 'mixed',
  isDone: true,
  at: new Date(noon).toISOString(),
  receivedAt: new Date(noon).toISOString(),
  supersedesId: null,
  who: 'Lars',
  personId: 'lars',
  ...more,
})
const dough = (steps: FloorStep[] = [], id = 'dough'): FloorDough => ({
  id,
  code: id.toUpperCase(),
  trialNumber: 1,
  formulaName: 'Tin loaf',
  dayNumber: 1,
  day: null,
  allergens: [],
  unchecked: 0,
  state: 'in_work',
  revision: 2,
  begunAt: null,
  bakedAt: null,
  turn: 1,
  measures: [],
  times: { mixTimeS: 600, bulkTimeS: 5400, proofTimeS: 3600, bakeTimeS: 2400 },
  water: null,
  steps,
  count: null,
})
const kept = (
  payload: Partial<EntryOf<'step'>['payload']> = {},
  more: Partial<EntryOf<'step'>> = {},
): EntryOf<'step'> => {
  const id = payload.id ?? uuid()
  return {
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
    kind: 'step',
    payload: {
      id,
      batchId: 'dough',
      step: 'mixed',
      isDone: true,
      agoS: 0,
      clockAheadS: 0,
      takenAt: new Date(noon).toISOString(),
      ...payload,
    },
    shown: { code: 'DOUGH', isFix: false },
    ...more,
  }
}
const told = (steps: FloorStep[], entries: OutboxEntry[], aheadMs = 0) =>
  stepsOfDough(dough(steps), entries, aheadMs).map(({ step, atMs, who }) => [step, atMs - noon, who])

describe('the steps of a dough on a tablet', () => {
  it('are those of the book and those that lie here alone, each once', () => {
    const mixed = kept({}, { state: 'book' })
    const folded = kept({ step: 'folded', takenAt: new Date(noon + hour).toISOString() })
    expect(told([inBook({ id: mixed.id, who: 'Esi' })], [mixed, folded])).toEqual([
      ['mixed', 0, 'Esi'],
      ['folded', hour, 'Esi'],
    ])
  })

  it('stand where the tablet has not fetched the book since', () => {
    expect(told([], [kept({}, { state: 'book' })])).toEqual([['mixed', 0, 'Esi']])
  })

  it('give way to a correction, also to one of somebody else that is in the book', () => {
    const mixed = kept({}, { state: 'book' })
    const first = inBook({ id: mixed.id, who: 'Esi' })
    const right = inBook({ supersedesId: mixed.id, at: new Date(noon - hour).toISOString() })
    expect(told([first, right], [mixed])).toEqual([['mixed', -hour, 'Lars']])
    expect(told([first], [mixed, kept({ supersedesId: mixed.id, isDone: false, reason: 'x' })])).toEqual([])
  })

  it('of another dough, or that the book refused, are none', () => {
    expect(
      told([], [kept({ batchId: 'other' }), kept({}, { state: 'attention', refusal: 'batch-not-begun' })]),
    ).toEqual([])
  })

  it('that only wait for a PIN stand', () => {
    expect(told([], [kept({}, { state: 'attention', refusal: 'correction-wants-pin' })])).toHaveLength(1)
  })

  it('are shown by the tablet’s clock, whatever that is, so that what runs has the time left that it has', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1e5, max: 1e5 }), fc.nat({ max: 5400 }), (aheadS, passedS) => {
        // The tablet's own time, where the book says that it is so long past noon.
        const now = noon + passedS * 1000 - aheadS * 1000
        const ahead = clockAheadMs({ value: { now: new Date(noon + passedS * 1000).toISOString() }, at: now })
        for (const [steps, entries] of [
          [[inBook()], []],
          [[], [kept({ clockAheadS: aheadS, takenAt: new Date(noon - aheadS * 1000).toISOString() })]],
        ] as const) {
          const [timer] = runningTimers([dough([...steps])], entries, ahead)
          expect((timer?.endsMs ?? 0) - now).toBe((5400 - passedS) * 1000)
        }
      }),
      { seed: 81 },
    )
  })

  it('are right again on a clock that was set since they were kept', () => {
    // Kept on a clock an hour behind, which was set right before the floor came.
    const entry = kept({ takenAt: new Date(noon - hour).toISOString(), clockAheadS: 3600 })
    expect(told([], [entry], 0)).toEqual([['mixed', 0, 'Esi']])
    // Of one that knew nothing of its clock there is only what that said.
    expect(told([], [kept({ clockAheadS: null })], hour)).toEqual([['mixed', 0, 'Esi']])
  })
})

describe('the timers of a floor', () => {
  it('are those of all doughs, whatever is over first', () => {
    const doughs = [
      dough([inBook({ step: 'proof_begun' })], 'b'),
      dough([], 'c'),
      dough([inBook({ step: 'in_oven' })], 'a'),
      dough([inBook({ step: 'out_of_oven' })], 'd'),
    ]
    expect(runningTimers(doughs, [], 0).map(({ code, phase }) => `${code} ${phase}`)).toEqual(['A bake', 'B proof'])
  })
})

describe('what is typed of a step', () => {
  const read = (typed: Parameters<typeof readTyped>[1], unit: '°C' | '°F' = '°C') =>
    readTyped('in_oven', typed, (value) => inCelsius(value, unit))

  it.each([
    ['a comma', { setTempC: ' 228,5 ' }, { setTempC: 228.5 }],
    ['a point', { readTempC: '228.5' }, { readTempC: 228.5 }],
    ['a sign of one’s own', { readTempC: '\u22125' }, { readTempC: -5 }],
    ['nothing', { setTempC: ' ', place: '  ', steam: null }, {}],
    ['no steam', { steam: false }, { steam: false }],
    ['a place', { place: ' Deck 2 ' }, { place: 'Deck 2' }],
    ['what another step has', { setting: '5' }, {}],
  ])('with %s is read', (_, typed, details) => {
    expect(read(typed)).toEqual({ details, faults: {} })
  })

  it.each([
    ['600', 'outside'],
    ['-41', 'outside'],
    ['2 30', 'no-number'],
    ['1e2', 'no-number'],
    ['hot', 'no-number'],
    ['Infinity', 'no-number'],
    ['..', 'no-number'],
    ['230,', 'no-number'],
  ])('as %s is refused at its field, and nothing of it is kept', (text, fault) => {
    expect(read({ setTempC: text, readTempC: '225' })).toEqual({
      details: { readTempC: 225 },
      faults: { setTempC: fault },
    })
  })

  it('in °F is the same temperature when it is shown', () => {
    fc.assert(
      fc.property(fc.integer({ min: -400, max: 9320 }), (tenths) => {
        const shown = tenths / 10
        const { setTempC } = read({ setTempC: String(shown) }, '°F').details
        expect(inTemperatureUnit(setTempC ?? NaN, '°F')).toBe(shown)
      }),
      { seed: 82 },
    )
  })
})

describe('where a dough is as far as a tablet knows', () => {
  const where = (of: FloorDough, entries: OutboxEntry[]) => {
    const { state, bakedAt } = whereaboutsOf(of, entries)
    return [state, bakedAt]
  }
  const out = (hours: number) => ({
    step: 'out_of_oven' as const,
    takenAt: new Date(noon + hours * hour).toISOString(),
  })

  it('is out of the oven from the moment of the step, before the book has it', () => {
    expect(where(dough(), [kept(out(0))])).toEqual(['baked', new Date(noon).toISOString()])
  })

  it('counts by the clock of the book, where the tablet knows that its own is wrong', () => {
    expect(where(dough(), [kept({ ...out(1), clockAheadS: -3600 })])).toEqual(['baked', new Date(noon).toISOString()])
  })

  it('is back where a step lies on the tablet that says it had not been done', () => {
    const step = inBook({ step: 'out_of_oven' })
    const baked: FloorDough = { ...dough([step]), state: 'baked', bakedAt: step.at }
    expect(where(baked, [])).toEqual(['baked', step.at])
    expect(where(baked, [kept({ ...out(0), isDone: false, supersedesId: step.id, reason: 'Slip.' })])).toEqual([
      'in_work',
      null,
    ])
  })
})
