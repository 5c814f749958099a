import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { lineOffTarget } from '@/lib/kitchen/conduct/line-off-target.input'
import { toleranceOfLine } from '@/lib/kitchen/conduct/tolerance-of-line.input'
import type { Scale, WeighLine, WeighList } from '@/lib/station/keep/weigh-facts'
import { saidOfEntry, textOfEntry } from '@/lib/station/kinds/kinds'
import type { EntryOf } from '@/lib/station/outbox/entry'
import { judgeMass } from '@/lib/station/outbox/judge-mass'
import { knowsOf } from '@/lib/station/outbox/knows-of'
import { lineOnScale } from '@/lib/station/outbox/line-on-scale'
import { nextToSend } from '@/lib/station/outbox/next-to-send'
import { nextToWeigh } from '@/lib/station/outbox/next-to-weigh'
import { lineKey, linesWithEntries } from '@/lib/station/outbox/stand-of-line'

const bench: Scale = { id: 'bench', name: 'Bench scale', stepG: 1, leastG: 20, mostG: 15_000 }
const dose: Scale = { id: 'dose', name: 'Dose scale', stepG: 0.1, leastG: 0.5, mostG: 600 }
const line = (more: Partial<WeighLine> = {}): WeighLine => ({
  stageId: 'final',
  stage: 'Final dough',
  ingredientId: 'salt',
  part: 'line',
  name: 'Salt',
  isSame: true,
  isDusty: false,
  target: { massG: 52.4, stepG: 0.1, toleranceG: 0.524 },
  apartG: null,
  scale: { id: 'dose', name: 'Dose scale' },
  parts: [],
  howTo: [],
  lots: [],
  stands: null,
  ...more,
})
const list = (...lines: WeighLine[]): WeighList => ({
  batchId: 'dough',
  code: '307',
  unit: 'g',
  lines,
  scales: [bench, dose],
})
const entry = (counter: number, more: Partial<EntryOf<'weighing'>> = {}, of: object = {}): EntryOf<'weighing'> => ({
  format: 1,
  id: `id-${counter}`,
  kind: 'weighing',
  schema: 1,
  payload: {
    id: `id-${counter}`,
    batchId: 'dough',
    stageId: 'final',
    ingredientId: 'salt',
    part: 'line',
    how: 'weighed',
    mass: '52.4',
    unit: 'g',
    takenAt: '2026-03-02T04:00:00.000Z',
    ...of,
  },
  hash: `hash-${counter}`,
  counter,
  stationId: 'station',
  personId: 'esi',
  personName: 'Esi',
  shiftToken: 'token',
  state: 'waiting',
  refusal: null,
  words: null,
  settledAt: null,
  shown: { code: '307', line: 'Salt', was: null },
  ...more,
})

describe('a line on its scale', () => {
  it('has the plan’s scale and tolerance, and the readings of that scale that are within it', () => {
    expect(lineOnScale(line(), list(), [])).toEqual({
      scale: 'Dose scale',
      stepG: 0.1,
      shownG: 52.4,
      toleranceG: 0.524,
      between: { leastG: 51.9, mostG: 52.9 },
      coarserThanG: null,
      beyond: null,
    })
    const free = line({ target: { massG: 812, stepG: 1, toleranceG: null } })
    expect(lineOnScale(free, list(), [])).toMatchObject({ toleranceG: null, between: null })
  })

  it('on another scale has the tolerance of the same rule for its steps, and says where that is wider than the plan’s', () => {
    const swaps = [{ from: 'dose', to: 'bench' }]
    expect(lineOnScale(line(), list(), swaps)).toEqual({
      scale: 'Bench scale',
      stepG: 1,
      shownG: 52,
      toleranceG: 1,
      between: { leastG: 52, mostG: 53 },
      coarserThanG: 0.524,
      beyond: null,
    })
    // Of a dose it is five per cent of what sets the doughs apart.
    const dosed = line({ target: { massG: 200, stepG: 1, toleranceG: 1 }, apartG: 10, scale: bench })
    expect(lineOnScale(dosed, list(), [{ from: 'bench', to: 'dose' }])).toMatchObject({
      toleranceG: 0.5,
      coarserThanG: null,
    })
    // Only what was on the scale that is swapped goes on the other one.
    expect(lineOnScale(line({ scale: bench }), list(), swaps)).toMatchObject({ scale: 'Bench scale', stepG: 0.1 })
    expect(lineOnScale(line({ scale: null }), list(), [{ from: null, to: 'bench' }]).scale).toBe('Bench scale')
    // One that is not the bakery's any more takes nothing's place.
    expect(lineOnScale(line(), list(), [{ from: 'dose', to: 'gone' }]).scale).toBe('Dose scale')
  })

  it('says where the scale does not carry it, or begins above it', () => {
    const heavy = line({ target: { massG: 812, stepG: 1, toleranceG: 8 }, scale: bench })
    expect(lineOnScale(heavy, list(), [{ from: 'bench', to: 'dose' }]).beyond).toEqual({ isHeavy: true, endG: 600 })
    const light = line({ target: { massG: 4, stepG: 0.1, toleranceG: 0.1 } })
    expect(lineOnScale(light, list(), [{ from: 'dose', to: 'bench' }]).beyond).toEqual({ isHeavy: false, endG: 20 })
    const none = line({ target: { massG: 0, stepG: 0.1, toleranceG: 0.1 } })
    expect(lineOnScale(none, list(), [{ from: 'dose', to: 'bench' }]).beyond).toBeNull()
  })

  it('names only readings that the book takes as on target, whatever the scale', () => {
    const masses = fc.double({ min: 0.1, max: 5000, noNaN: true }).map((massG) => Number(massG.toFixed(1)))
    const steps = fc.constantFrom(0.01, 0.1, 0.5, 1, 2, 5)
    fc.assert(
      fc.property(masses, steps, fc.option(masses, { nil: null }), (massG, stepG, apartG) => {
        const scale = { ...bench, id: 'other', stepG }
        const plan = toleranceOfLine({ targetG: massG, stepG: 0.1, apartG })
        const on = lineOnScale(line({ target: { massG, stepG: 0.1, toleranceG: plan }, apartG }), { scales: [scale] }, [
          { from: 'dose', to: 'other' },
        ])
        expect(on.toleranceG).toBe(toleranceOfLine({ targetG: massG, stepG, apartG }))
        const { leastG, mostG } = on.between!
        expect(leastG).toBeLessThanOrEqual(mostG)
        for (const shownG of [leastG, mostG])
          if (shownG > 0)
            expect(judgeMass({ massG: shownG, targetG: massG, toleranceG: on.toleranceG })).toEqual({ found: 'within' })
        // A step further is off.
        expect(judgeMass({ massG: mostG + stepG, targetG: massG, toleranceG: on.toleranceG })?.found).toBe('over')
      }),
    )
  })
})

describe('what the scale shows', () => {
  it.each([
    [424, 'over', 12],
    [400, 'under', 12],
    [416, 'within', undefined],
    [0, 'nothing', undefined],
  ] as const)('%d g of 412 g within 4.12 g: %s', (massG, found, byG) => {
    expect(judgeMass({ massG, targetG: 412, toleranceG: 4.12 })).toEqual({
      found,
      ...(byG === undefined ? {} : { byG }),
    })
  })

  it('of what takes as much as it takes is never off, and of what has no place in the dough it is', () => {
    expect(judgeMass({ massG: 900, targetG: 812, toleranceG: null })).toBeNull()
    expect(judgeMass({ massG: 0, targetG: 812, toleranceG: null })).toEqual({ found: 'nothing' })
    expect(judgeMass({ massG: 12, targetG: 0, toleranceG: 0.1 })).toEqual({ found: 'over', byG: 12 })
    expect(judgeMass({ massG: 0, targetG: 0, toleranceG: 0.1 })).toEqual({ found: 'within' })
  })

  it('is never called within where the book’s rule says otherwise', () => {
    const mass = fc.double({ min: 0, max: 5000, noNaN: true })
    fc.assert(
      fc.property(mass, mass, fc.option(mass, { nil: null }), (massG, targetG, toleranceG) => {
        const found = lineOffTarget({ how: 'weighed', massG, targetG, toleranceG })
        const said = judgeMass({ massG, targetG, toleranceG })
        expect(said?.found === 'over' || said?.found === 'under').toBe(found === 'off')
        expect(said?.found === 'nothing').toBe(found === 'left-out')
      }),
    )
  })
})

describe('what stands of a line', () => {
  const inBook = {
    id: 'of-henk',
    who: 'Henk',
    personId: 'henk',
    at: '2026-03-02T04:10:00.000Z',
    how: 'weighed' as const,
    massG: 52,
    lots: [],
  }
  const stood = (entries: EntryOf<'weighing'>[], more: Partial<WeighLine> = {}) =>
    linesWithEntries(list(line(more)), entries)[0]!

  it('is what the tablet kept, until the book says what stands there', () => {
    expect(stood([]).stands).toBeNull()
    expect(stood([entry(1)]).stands).toMatchObject({ how: 'weighed', massG: 52.4, who: 'Esi', state: 'waiting' })
    expect(stood([entry(1, {}, { mass: '1.85', unit: 'oz' })]).stands?.massG).toBeCloseTo(52.45, 2)
    expect(stood([entry(1, { state: 'book' })]).stands).toMatchObject({ massG: 52.4, state: 'book' })
    expect(stood([entry(1, { state: 'book' })], { stands: inBook }).stands).toMatchObject({ massG: 52, who: 'Henk' })
    expect(stood([entry(1)], { stands: inBook }).stands).toMatchObject({ massG: 52.4, state: 'waiting' })
    expect(stood([entry(1, {}, { how: 'ticked', mass: null })]).stands).toMatchObject({ how: 'ticked', massG: null })
  })

  it('is nothing of what the book refused, of another line and of another dough', () => {
    expect(stood([entry(1, { state: 'attention', refusal: 'odd-weighing' })]).stands).toBeNull()
    expect(stood([entry(1, {}, { part: 'dose' })]).stands).toBeNull()
    expect(stood([entry(1, {}, { batchId: 'other' })]).stands).toBeNull()
  })

  it('is what a correction puts there, and what came too late is told beside it', () => {
    const fix = (counter: number, of: string, more: Partial<EntryOf<'weighing'>> = {}) =>
      entry(counter, more, { supersedesId: of, reason: 'slip', mass: '53' })
    expect(stood([entry(1), fix(2, 'id-1')]).stands).toMatchObject({ id: 'id-2', massG: 53 })
    expect(stood([fix(2, 'of-henk', { state: 'book' }), fix(3, 'id-2')], { stands: inBook }).stands?.id).toBe('id-3')
    expect(stood([fix(2, 'of-henk', { state: 'attention', refusal: 'invalid' })], { stands: inBook }).stands?.id).toBe(
      'of-henk',
    )
    const late = stood([entry(1, { state: 'aside' })], { stands: inBook })
    expect(late.stands?.id).toBe('of-henk')
    expect(late.lost).toMatchObject([{ massG: 52.4 }])
    // Before the tablet has asked again its own is all it knows.
    expect(stood([entry(1, { state: 'aside' })]).stands).toMatchObject({ id: 'id-1', state: 'aside' })
  })

  it('leaves what is to be weighed next: after the line that was kept, then whatever was passed over', () => {
    const lines = [
      { key: 'a', stands: null },
      { key: 'b', stands: 1 },
      { key: 'c', stands: null },
    ]
    expect([null, 'a', 'b', 'c'].map((after) => nextToWeigh(lines, after)?.key)).toEqual(['a', 'c', 'c', 'a'])
    expect(nextToWeigh([{ key: 'a', stands: 1 }], 'a')).toBeNull()
  })
})

describe('a weighing on its way', () => {
  it('says itself in a line, with what it takes the place of', () => {
    expect(saidOfEntry(entry(1), 'de-DE', true)).toBe('Dough 307, Salt: 52,4\u00a0g')
    expect(saidOfEntry(entry(1, {}, { how: 'ticked', mass: null }), 'en-GB', true)).toBe('Dough 307, Salt: as planned')
    const fixed = entry(2, { shown: { code: '307', line: 'Salt', was: '53.0 g' } }, { how: 'left_out', mass: null })
    expect(saidOfEntry(fixed, 'en-GB', true)).toBe('Dough 307, Salt: none of it in place of 53.0 g')
    const lots = [{ code: 'S-1', isPast: false }]
    const fromLot = entry(3, { shown: { code: '307', line: 'Salt', was: null, lots } })
    expect(saidOfEntry(fromLot, 'en-GB', true)).toBe('Dough 307, Salt: 52.4\u00a0g, from S-1')
    // Of which lot is a weight's neighbour: where there is one, some went in.
    expect(saidOfEntry(fromLot, 'en-GB', false)).toBe('Dough 307, Salt: written')
  })

  it('tells no weight, and not that there is none, to whoever has not opened the weights of the dough', () => {
    const none = entry(2, {}, { how: 'left_out', mass: null })
    const fixed = entry(3, { shown: { code: '307', line: 'Salt', was: '53.0 g' } })
    expect([entry(1), none, fixed].map((each) => saidOfEntry(each, 'en-GB', false))).toEqual([
      'Dough 307, Salt: written',
      'Dough 307, Salt: written',
      'Dough 307, Salt: corrected',
    ])
    const knows = (personId: string | null, openedBy: string[]) =>
      knowsOf(entry(1), personId, [{ batchId: 'dough', openedBy }])
    expect([knows('esi', []), knows('henk', ['henk']), knows('henk', ['esi']), knows(null, ['henk'])]).toEqual([
      true,
      true,
      false,
      false,
    ])
    expect(knowsOf(entry(1), 'henk', [{ batchId: 'other', openedBy: ['henk'] }])).toBe(false)
  })

  it('has one text whose confirmation is no part of it', () => {
    const text = textOfEntry('weighing', entry(1).payload)
    expect(textOfEntry('weighing', { ...entry(1).payload, confirmed: true })).toBe(text)
    expect(JSON.parse(text)).toMatchObject({ format: 1, batch: 'dough', mass: '52.4', supersedes: null })
  })

  it('waits while what it corrects cannot go', () => {
    const fix = entry(2, { personId: 'henk' }, { supersedesId: 'id-1', reason: 'slip' })
    const first = entry(1, { state: 'attention', refusal: 'odd-weighing' })
    expect(nextToSend([first, fix], [])).toBeNull()
    expect(nextToSend([{ ...first, state: 'book' }, fix], [])?.entries).toEqual([fix])
  })

  it('is named by its line alone', () => {
    expect(lineKey(line())).toBe(lineKey(entry(1).payload))
  })
})
