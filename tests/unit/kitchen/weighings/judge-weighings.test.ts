import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Closing } from '@/lib/documents/closing/closing'
import { judgeWeighings } from '@/lib/kitchen/weighings/judge-weighings'

type Weighings = NonNullable<Closing['weighings']>
type Entry = Weighings['entries'][number]

const minute = (at: number) => new Date(Date.UTC(2026, 2, 2, 4, at)).toISOString()
const line = (
  id: string,
  isDose: boolean,
  massesG: [number, number],
  toleranceG: number | null,
): Weighings['lines'][number] => ({
  stage: { id: 's', kind: 'final_dough', name: '' },
  ingredient: { id, name: id },
  part: isDose ? 'dose' : 'line',
  isDose,
  targets: massesG.map((massG, arm) => ({ arm, massG, stepG: 0.1, toleranceG })),
})
const lines = [
  line('flour', false, [1000, 1000], 10),
  line('salt', false, [20, 18], 0.2),
  line('malt', true, [0, 12], 0.6),
]
const dough = (id: string, arm: number, state: Closing['doughs'][number]['state'] = 'measured') => ({
  id,
  code: id.toUpperCase(),
  arm,
  day: 1,
  plannedOrder: 1,
  state,
  stateWhy: null,
  begunAt: minute(0),
  doneAt: null,
  piecesMade: 1,
  piecesGood: 1,
  keptAside: 0,
})
const by = { id: 'p', name: 'Esi' }
const reading = (of: string, at: number, measure = 'volume'): Closing['readings'][number] => ({
  id: `${of} ${at} ${measure}`,
  dough: of,
  measure,
  piece: 1,
  factorLevel: null,
  repeat: 1,
  value: 1,
  valueEntered: '1',
  unitEntered: 'g',
  by,
  // What a device's clock says orders nothing.
  takenAt: minute(0),
  receivedAt: minute(at),
  supersedes: null,
  reason: null,
  plausibleLeast: null,
  plausibleMost: null,
})
const measure = (id: string, code: string, derivation: string | null = null): Closing['measures'][number] => ({
  id,
  code,
  name: code,
  unit: 'g',
  digits: 0,
  level: 'piece',
  derivation,
  repeats: 1,
  repeatLimit: null,
  plausibleLeast: 0,
  plausibleMost: 9999,
  isEnded: false,
})
const measures = [
  measure('volume', 'loaf-volume'),
  measure('scaled', 'dough-mass'),
  measure('deciding', 'specific-volume', 'loaf-volume / dough-mass'),
]
const weighed = (
  of: string,
  ingredient: string,
  massG: number,
  at: number,
  supersedes: string | null = null,
): Entry => ({
  id: `${of} ${ingredient} ${at}`,
  dough: of,
  stage: 's',
  ingredient,
  part: ingredient === 'malt' ? 'dose' : 'line',
  how: 'weighed',
  massG,
  massEntered: String(massG),
  unitEntered: 'g',
  by,
  takenAt: minute(0),
  receivedAt: minute(at),
  supersedes,
  reason: supersedes && 'slip',
})
const judged = (entries: Entry[], readings: Closing['readings'] = [reading('b', 10)]) =>
  judgeWeighings(
    { measures, doughs: [dough('a', 0), dough('b', 1)], readings, weighings: { lines, entries } },
    'deciding',
  )!

describe('what was weighed', () => {
  it('takes a dough out of its arm by a dose that was off before what decides was read, and lists it', () => {
    const { out, outAsLast, off } = judged([weighed('b', 'malt', 14, 5)])
    expect([[...out], [...outAsLast]]).toEqual([['b'], ['b']])
    expect(off).toMatchObject([
      { code: 'B', ingredient: { name: 'malt' }, massG: 14, plannedG: 12, found: 'off', isLate: false },
    ])
  })

  it('takes the control out that got the dose of another', () => {
    expect([...judged([weighed('a', 'malt', 12, 5)]).out]).toEqual(['a'])
  })

  it('lists another line that is off and moves nothing', () => {
    const { out, off } = judged([weighed('b', 'flour', 1100, 5), weighed('a', 'salt', 18, 5)])
    expect([...out]).toEqual([])
    expect(off.map(({ code, isDose }) => [code, isDose])).toEqual([
      ['A', false],
      ['B', false],
    ])
  })

  it('moves no dough once what decides was read, and says so; what went before the oven does not decide', () => {
    const { out, outAsLast, off } = judged([weighed('b', 'malt', 30, 10)])
    expect([[...out], [...outAsLast]]).toEqual([[], ['b']])
    expect(off).toMatchObject([{ isLate: true }])
    expect([...judged([weighed('b', 'malt', 30, 10)], [reading('b', 2, 'scaled'), reading('b', 20)]).out]).toEqual([
      'b',
    ])
  })

  it('of a dough that was out is not put right either, once what decides was read', () => {
    const { out, outAsLast, off, corrections } = judged([
      weighed('b', 'malt', 1.2, 5),
      weighed('b', 'malt', 12, 15, 'b malt 5'),
    ])
    expect([[...out], [...outAsLast]]).toEqual([['b'], []])
    expect(off).toMatchObject([{ massG: 1.2, isLate: false }])
    expect(corrections).toMatchObject([{ code: 'B', before: { massG: 1.2 }, after: { massG: 12 }, reason: 'slip' }])
  })

  it('and put right before is right', () => {
    const { out, off, corrections } = judged([weighed('b', 'malt', 1.2, 5), weighed('b', 'malt', 12, 6, 'b malt 5')])
    expect([[...out], off.length, corrections.length]).toEqual([[], 0, 1])
  })

  it('is missed where nothing, or not every line, was written, and that moves nothing', () => {
    const { out, unwritten, partly } = judged([weighed('b', 'malt', 12, 5)])
    expect([[...out], unwritten, partly]).toEqual([[], ['A'], ['B']])
  })

  it('was not written down when it was closed before there were weighings', () => {
    expect(judgeWeighings({ measures, doughs: [dough('a', 0)], readings: [], weighings: null }, 'deciding')).toBeNull()
  })

  it('after the first reading that decides changes the count by nothing, whatever is sent', () => {
    const late = fc.array(
      fc.record({
        of: fc.constantFrom('a', 'b'),
        ingredient: fc.constantFrom('flour', 'salt', 'malt'),
        massG: fc.double({ min: 0, max: 5000, noNaN: true }),
        at: fc.integer({ min: 10, max: 59 }),
      }),
      { maxLength: 6 },
    )
    const before = [weighed('a', 'malt', 12, 5), weighed('b', 'salt', 18, 5)]
    const readings = [reading('a', 10), reading('b', 10)]
    fc.assert(
      fc.property(late, (sent) => {
        const entries = sent.map(({ of, ingredient, massG, at }, n) => ({
          ...weighed(
            of,
            ingredient,
            massG,
            at,
            before.find((each) => each.dough === of && each.ingredient === ingredient)?.id ?? null,
          ),
          id: `late ${n}`,
        }))
        expect([...judged([...before, ...entries], readings).out]).toEqual(['a'])
      }),
    )
  })
})
