import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { backOffMs } from '@/lib/station/outbox/back-off'
import type { EntryOf, Holder, OutboxEntry } from '@/lib/station/outbox/entry'
import { judgeAnswer, type Answer } from '@/lib/station/outbox/judge-answer'
import { nextToSend } from '@/lib/station/outbox/next-to-send'
import { placesWithEntries, toRead } from '@/lib/station/outbox/stand-of-place'
import { readEnteredValue } from '@/lib/kitchen/readings/read-entered-value'
import { readTyped, typedWith } from '@/lib/station/outbox/typed-digits'

const unreadable = 'The book could not read this.'
const entry = (counter: number, more: Partial<EntryOf<'reading'>> = {}): OutboxEntry => ({
  format: 1,
  id: `id-${counter}`,
  kind: 'reading',
  schema: 1,
  payload: {
    id: `id-${counter}`,
    batchId: 'dough',
    measureId: 'measure',
    piece: null,
    factorLevel: null,
    repeat: 1,
    value: '26.4',
    unit: '°C',
    takenAt: '2026-03-02T04:00:00.000Z',
  },
  hash: `hash-${counter}`,
  counter,
  stationId: 'station',
  personId: 'esi',
  personName: 'Esi',
  shiftToken: 'first token',
  state: 'waiting',
  refusal: null,
  words: null,
  settledAt: null,
  shown: { code: '101', measure: 'Dough temperature', piece: null, level: null, repeat: 1, unit: '°C' },
  ...more,
})
/** A correction of an entry of this tablet, or of what has another id. */
const correction = (counter: number, of: string, more: Partial<EntryOf<'correction'>> = {}): OutboxEntry => ({
  ...entry(counter),
  kind: 'correction',
  payload: { id: `id-${counter}`, supersedesId: of, piece: null, repeat: 1, value: '24.6', unit: '°C', reason: 'slip' },
  shown: {
    code: '101',
    measure: 'Dough temperature',
    batchId: 'dough',
    measureId: 'measure',
    level: null,
    was: '26.4 °C',
    at: '2026-03-02T04:05:00.000Z',
  },
  ...more,
})
const holder = (personId: string, more: Partial<Holder> = {}): Holder => ({
  personId,
  name: personId,
  token: `${personId} now`,
  endsAt: 0,
  asks: 'nothing',
  ...more,
})

describe('what is sent next', () => {
  it('is the oldest first, in the order of the tablet, of one person and under their latest token', () => {
    const entries = [entry(3), entry(1), entry(2), entry(4, { personId: 'henk' }), entry(5)]
    const next = nextToSend(entries, [holder('esi'), holder('henk')])
    expect(next?.token).toBe('esi now')
    expect(next?.entries.map(({ counter }) => counter)).toEqual([1, 2, 3])
  })

  it('goes under the token it was kept with where the tablet has no later one', () => {
    expect(nextToSend([entry(1)], [])?.token).toBe('first token')
    expect(nextToSend([entry(1)], [holder('esi', { token: null })])?.token).toBe('first token')
  })

  it('leaves out whoever has to log on first, and holds nobody else up', () => {
    const entries = [entry(1), entry(2, { personId: 'henk' })]
    expect(nextToSend(entries, [holder('esi', { asks: 'pin' }), holder('henk')])?.personId).toBe('henk')
    expect(nextToSend(entries, [holder('esi', { asks: 'tap' }), holder('henk', { asks: 'pin' })])).toBeNull()
  })

  it('holds a correction back while what it corrects cannot go, and what corrects that', () => {
    const ofHenk = [correction(2, 'id-1', { personId: 'henk' }), correction(3, 'id-2'), entry(4)]
    const sent = (entries: OutboxEntry[], holders: Holder[] = []) =>
      nextToSend(entries, holders)?.entries.map(({ counter }) => counter)
    // Whose reading it is has to log on first.
    expect(sent([entry(1, { personId: 'teo' }), ...ofHenk], [holder('teo', { asks: 'pin' })])).toEqual([4])
    expect(sent([entry(1, { state: 'attention' }), ...ofHenk])).toEqual([4])
    expect(sent([entry(1), ...ofHenk])).toEqual([1])
    expect(sent([entry(1, { state: 'book' }), ...ofHenk])).toEqual([2])
    expect(sent([correction(2, 'id-1'), entry(1)])).toEqual([1, 2])
  })

  it('is nothing of what is in the book or needs somebody, and at most fifty', () => {
    expect(nextToSend([entry(1, { state: 'book' }), entry(2, { state: 'attention' })], [])).toBeNull()
    const many = Array.from({ length: 120 }, (_, at) => entry(at + 1))
    expect(nextToSend(many, [])?.entries).toHaveLength(50)
  })
})

describe('an answer', () => {
  const sent = [entry(1), entry(2)]
  const judge = (answer: Answer) => judgeAnswer(sent, answer, unreadable)
  const kept = (at: number, more: object = {}) => ({ outcome: 'kept', id: `id-${at}`, hash: `hash-${at}`, ...more })

  it.each<[string, Answer]>([
    ['none at all', null],
    ['500', { status: 500, body: { entries: [kept(1), kept(2)] } }],
    ['503 away', { status: 503, body: { refusal: 'away' } }],
    ['429', { status: 429, body: { refusal: 'too-many' } }],
    ['JSON that is no object', { status: 200, body: 'welcome' }],
    ['JSON of somebody else', { status: 200, body: { ok: true } }],
    ['403 of somebody else', { status: 403, body: { error: 'blocked' } }],
    ['403 for another site', { status: 403, body: { refusal: 'other-site' } }],
    ['no entries', { status: 200, body: { entries: [] } }],
    ['another id', { status: 200, body: { entries: [kept(7), kept(8)] } }],
    ['another hash', { status: 200, body: { entries: [kept(1, { hash: 'else' }), kept(2, { hash: 'else' })] } }],
  ])('%s leaves everything where it is, to be sent again', (_, answer) => {
    expect(judge(answer)).toEqual({ outcome: 'again' })
  })

  it.each(['not-signed-in', 'not-allowed'])('%s asks who this is', (refusal) => {
    expect(judge({ status: refusal === 'not-allowed' ? 403 : 401, body: { refusal } })).toEqual({ outcome: 'who' })
  })

  it('lets go of each entry by its own echo: kept, aside, refused with words', () => {
    const aside = { outcome: 'aside', id: 'id-2', hash: 'hash-2', refusal: 'aside-place-taken', words: 'Taken.' }
    expect(judge({ status: 200, body: { entries: [kept(1), aside] } })).toEqual({
      outcome: 'answered',
      settled: [
        { id: 'id-1', state: 'book', refusal: null, words: null },
        { id: 'id-2', state: 'aside', refusal: null, words: 'Taken.' },
      ],
    })
    const refused = { outcome: 'refused', id: 'id-2', refusal: 'odd-reading', words: 'Look again.' }
    expect(judge({ status: 200, body: { entries: [kept(1, { hash: 'else' }), refused] } })).toEqual({
      outcome: 'answered',
      settled: [{ id: 'id-2', state: 'attention', refusal: 'odd-reading', words: 'Look again.' }],
    })
  })

  it('brings what is wrong with single fields, in words, and nothing that is none', () => {
    const problems = { 'lots.0.code': 'Lot F-1 was ended.', 'lots.1.code': 7 }
    const refused = { outcome: 'refused', id: 'id-1', refusal: 'invalid', words: 'Not kept yet.', problems }
    expect(judge({ status: 200, body: { entries: [refused] } })).toMatchObject({
      settled: [{ id: 'id-1', state: 'attention', words: 'Not kept yet.', faults: ['Lot F-1 was ended.'] }],
    })
  })

  it('that refuses the whole puts all of it before a person', () => {
    expect(judge({ status: 422, body: { refusal: 'wrong-shape' } })).toMatchObject({
      outcome: 'answered',
      settled: [
        { id: 'id-1', state: 'attention', words: unreadable },
        { id: 'id-2', state: 'attention', words: unreadable },
      ],
    })
  })

  it('of any kind never says of an entry that it is in the book without its id and hash', () => {
    const any = fc.record({
      status: fc.constantFrom(200, 400, 401, 403, 413, 422, 500),
      body: fc.oneof(
        fc.anything(),
        fc.record({
          entries: fc.array(
            fc.record({
              outcome: fc.constantFrom('kept', 'aside', 'refused', 'else'),
              id: fc.constantFrom('id-1', 'id-2', 'id-3', null),
              hash: fc.constantFrom('hash-1', 'hash-2', undefined),
              refusal: fc.constantFrom('odd-reading', 'not-allowed', undefined),
            }),
          ),
        }),
      ),
    })
    fc.assert(
      fc.property(any, (answer) => {
        const judged = judge(answer)
        if (judged.outcome !== 'answered') return
        const { entries } = answer.body as { entries?: { id: unknown; hash: unknown }[] }
        for (const { id, state } of judged.settled) {
          if (state !== 'book' && state !== 'aside') continue
          const echoed = entries?.some((each) => each?.id === id && each.hash === id.replace('id', 'hash'))
          expect(echoed).toBe(true)
        }
      }),
    )
  })
})

describe('the pause after failures', () => {
  it('doubles, is drawn from its upper half, and is never above a minute', () => {
    expect([1, 2, 3, 7, 50].map((failures) => backOffMs(failures, 0))).toEqual([500, 1000, 2000, 30_000, 30_000])
    fc.assert(
      fc.property(fc.nat(100), fc.double({ min: 0, max: 0.999, noNaN: true }), (failures, chance) => {
        const pause = backOffMs(failures, chance)
        expect(pause).toBeGreaterThanOrEqual(500)
        expect(pause).toBeLessThanOrEqual(60_000)
      }),
    )
  })
})

describe('a number that is typed', () => {
  const type = (keys: string) =>
    Array.from(keys).reduce((text, key) => typedWith(text, key === '<' ? 'delete' : key === '-' ? 'sign' : key), '')
  it.each([
    ['264', '264'],
    ['26.4', '26.4'],
    ['26..4', '26.4'],
    ['.5', '0.5'],
    ['007', '7'],
    ['26<5', '25'],
    ['<<1', '1'],
    ['1234567890', '123456789'],
    ['-18.5', '-18.5'],
    ['18-.5', '-18.5'],
    ['18--', '18'],
    ['-<5', '5'],
    ['-1234567890', '-123456789'],
  ])('%s becomes %s', (keys, text) => expect(type(keys)).toBe(text))

  it('is none while nothing is typed, and one with a mark at its end', () => {
    expect([readTyped(''), readTyped('-'), readTyped('26.'), readTyped('26.4')]).toEqual([null, null, '26', '26.4'])
    expect([readTyped('-18.5'), readTyped('-0'), readTyped('-0.0')]).toEqual(['-18.5', '0', '0.0'])
  })

  it('is one that the book reads without asking back, whatever is pressed', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...Array.from('0123456789.<-'))), (keys) => {
        const text = type(keys.join(''))
        expect(text === '' || text === '-' || readTyped(text) !== null).toBe(true)
        const kept = readTyped(text)
        if (kept !== null) expect(readEnteredValue(kept)).toEqual({ number: kept })
      }),
    )
  })
})

describe('what stands in a place', () => {
  const reading = {
    id: 'of-henk',
    value: '26',
    unit: '°C',
    inBase: 26,
    at: '2026-03-02T04:10:00.000Z',
    receivedAt: '2026-03-02T04:10:00.000Z',
    who: 'Henk',
    personId: 'henk',
  }
  const place = { piece: null, factorLevel: null, repeat: 1, reading: null }
  const ofRepeats = { repeats: 1, repeatLimit: null, toBase: { times: 1, plus: 0 } }
  const measure = { id: 'measure', places: [place], ...ofRepeats }
  const stands = (entries: OutboxEntry[], places = [place] as Parameters<typeof placesWithEntries>[1]['places']) =>
    placesWithEntries('dough', { ...measure, places }, entries)[0]?.stands

  it('is what the tablet kept, until the book says what stands there', () => {
    expect(stands([])).toBeNull()
    expect(stands([entry(1)])).toMatchObject({ value: '26.4', who: 'Esi', state: 'waiting' })
    expect(stands([entry(1, { state: 'book' })])).toMatchObject({ value: '26.4', state: 'book' })
    expect(stands([entry(1, { state: 'book' })], [{ ...place, reading }])).toMatchObject({ value: '26', who: 'Henk' })
    expect(stands([entry(1)], [{ ...place, reading }])).toMatchObject({ value: '26.4', state: 'waiting' })
  })

  it('is nothing of what the book refused, and of another dough', () => {
    expect(stands([entry(1, { state: 'attention' })])).toBeNull()
    expect(placesWithEntries('other', measure, [entry(1)])[0]?.stands).toBeNull()
  })

  it('is what a correction puts there, of a reading of this tablet or of the book, and not what lost', () => {
    expect(stands([entry(1), correction(2, 'id-1')])).toMatchObject({
      id: 'id-2',
      value: '24.6',
      state: 'waiting',
      at: '2026-03-02T04:00:00.000Z',
      receivedAt: '2026-03-02T04:05:00.000Z',
    })
    const inBook = [{ ...place, reading }]
    expect(stands([correction(2, 'of-henk', { state: 'book' })], inBook)).toMatchObject({ value: '24.6', who: 'Esi' })
    expect(stands([correction(2, 'of-henk'), correction(3, 'id-2')], inBook)).toMatchObject({ id: 'id-3' })
    // What waits for a PIN stands, and says that it needs somebody; what was refused does not.
    const refused = { state: 'attention' as const, refusal: 'odd-reading' }
    expect(stands([correction(2, 'of-henk', refused)], inBook)).toMatchObject({ value: '26' })
    const forPin = { state: 'attention' as const, refusal: 'correction-wants-pin' }
    expect(stands([correction(2, 'of-henk', forPin)], inBook)).toMatchObject({ value: '24.6', state: 'attention' })
    // Once the book says what stands, one that was kept aside is told beside it.
    const [lost] = placesWithEntries('dough', { ...measure, places: inBook }, [
      correction(2, 'of-teo', { state: 'aside' }),
    ])
    expect(lost).toMatchObject({ stands: { value: '26' }, lost: [{ value: '24.6', unit: '°C' }] })
  })

  it('asks for a third where two disagree, as the book does, and not once they are put right', () => {
    const twice = { ...measure, repeats: 2, repeatLimit: 1, places: [place, { ...place, repeat: 2 }] }
    const second = entry(2, { payload: { ...entry(2).payload, repeat: 2, value: '28' } as never })
    const repeats = (entries: OutboxEntry[], of = twice) =>
      placesWithEntries('dough', of, entries).map((each) => [each.repeat, each.stands?.value ?? null])
    expect(repeats([entry(1)])).toEqual([
      [1, '26.4'],
      [2, null],
    ])
    expect(repeats([entry(1), second])).toEqual([
      [1, '26.4'],
      [2, '28'],
      [3, null],
    ])
    const third = entry(4, { payload: { ...entry(4).payload, repeat: 3, value: '26.6' } as never })
    expect(repeats([entry(1), second, third])).toEqual([
      [1, '26.4'],
      [2, '28'],
      [3, '26.6'],
    ])
    const right = correction(3, 'id-2', {
      payload: { ...(correction(3, 'id-2').payload as object), repeat: 2, value: '26' } as never,
    })
    expect(repeats([entry(1), second, right])).toHaveLength(2)
    // The book offered one before it was put right here.
    const offered = { ...twice, places: [...twice.places, { ...place, repeat: 3 }] }
    expect(repeats([entry(1), second, right], offered)).toHaveLength(2)
    // In °F the two are 1.6 °F apart, which is less than 1 °C.
    const inF = { ...twice, toBase: { times: 5 / 9, plus: -160 / 9 } }
    expect(repeats([entry(1), second], inF)).toHaveLength(2)
  })

  it('counts what is still to read among the measures that are wanted', () => {
    const noAge = { ageLeastH: null, ageMostH: null }
    const one = {
      code: null,
      name: '',
      unit: '',
      digits: 0,
      least: 0,
      most: 1,
      level: 'batch' as const,
      byDisplacement: false,
      ...noAge,
      ...ofRepeats,
    }
    const dough = {
      id: 'dough',
      measures: [
        { ...one, ...measure, isWanted: true },
        { ...one, id: 'other', places: [place, place], isWanted: true },
        { ...one, id: 'more', places: [place], isWanted: false },
      ],
    }
    expect([toRead(dough, []), toRead(dough, [entry(1)])]).toEqual([3, 2])
  })
})
