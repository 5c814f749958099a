import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { AmendmentContent } from '@/lib/documents/amendment/text-of-amendment'
import { amendContent } from '@/lib/kitchen/amendments/amend-content'
import { holdingReadings } from '@/lib/kitchen/amendments/reading-at-place'
import type { TrialContent } from '@/lib/kitchen/results/content-of-trial'

const at = '2026-03-02T04:00:00.000Z'
const by = { id: 'esi', name: 'Esi' }
const doughOf = (n: number, state: TrialContent['doughs'][number]['state']): TrialContent['doughs'][number] => ({
  id: `dough${n}`,
  code: `30${n}`,
  arm: n % 2,
  day: 1 + Math.floor(n / 2),
  plannedOrder: n,
  state,
  stateWhy: null,
  begunAt: at,
  doneAt: at,
  piecesMade: 2,
  piecesGood: 2,
  keptAside: 0,
})
const readingOf = (n: number, piece: number, supersedes: string | null = null, value = 400 + n) => ({
  id: supersedes === null ? `r${n}-${piece}` : `c${n}-${piece}`,
  dough: `dough${n}`,
  measure: 'mass',
  piece,
  factorLevel: null,
  repeat: 1,
  value,
  valueEntered: String(value),
  unitEntered: 'g',
  by,
  takenAt: at,
  receivedAt: at,
  supersedes,
  reason: supersedes === null ? null : 'slip',
  plausibleLeast: null,
  plausibleMost: null,
})
const closed: TrialContent = {
  measures: [],
  doughs: [doughOf(0, 'measured'), doughOf(1, 'measured'), doughOf(2, 'baked')],
  readings: [readingOf(0, 1), readingOf(0, 2), readingOf(1, 1), readingOf(1, 1, 'r1-1', 410)],
  weighings: null,
  found: [],
  repairs: [],
}
const amendment = (id: string, change: AmendmentContent['change']): AmendmentContent => ({
  bakery: 'b',
  trial: 't',
  id,
  closing: 'a'.repeat(64),
  change,
  reason: 'the other scale',
  by,
  at: '2026-03-03T04:00:00.000Z',
  entry: null,
})
const value = (id: string, n: number, piece: number, to: number, oldId?: string) =>
  amendment(id, {
    kind: 'reading',
    dough: { id: `dough${n}`, code: `30${n}` },
    measure: { id: 'mass', code: null, name: 'Mass', unit: 'g' },
    piece,
    factorLevel: null,
    repeat: 1,
    old:
      oldId === undefined
        ? null
        : { reading: oldId, piece: 1, repeat: 1, value: 1, valueEntered: '1', unitEntered: 'g' },
    new: { value: to, valueEntered: String(to), unitEntered: 'g' },
    takenAt: null,
  })
const out = (id: string, n: number) =>
  amendment(id, { kind: 'not-counted', dough: { id: `dough${n}`, code: `30${n}` }, old: 'measured' })
const held = (content: TrialContent) =>
  holdingReadings(content)
    .map(({ dough, piece, value: each }) => `${dough} ${piece} ${each}`)
    .sort()

describe('what was closed with amendments put in', () => {
  it('has another value where one was closed, also where that was a correction, and goes on from there', () => {
    const first = amendContent(closed, [value('a1', 1, 1, 420)])
    expect(held(first)).toEqual(['dough0 1 400', 'dough0 2 400', 'dough1 1 420'])
    const second = amendContent(closed, [value('a1', 1, 1, 420), value('a2', 1, 1, 430)])
    expect(held(second)).toEqual(['dough0 1 400', 'dough0 2 400', 'dough1 1 430'])
  })

  it('has what was missing, which makes a dough that was under way a measured one, and no other', () => {
    const amended = amendContent(closed, [value('a1', 2, 1, 401), value('a2', 1, 2, 402)])
    expect(held(amended)).toEqual(['dough0 1 400', 'dough0 2 400', 'dough1 1 410', 'dough1 2 402', 'dough2 1 401'])
    expect(amended.doughs.map(({ state }) => state)).toEqual(['measured', 'measured', 'measured'])
  })

  it('moves a reading that was of another piece, and leaves nothing where it was', () => {
    const amended = amendContent(closed, [value('a1', 1, 2, 410, 'r1-1')])
    expect(held(amended)).toEqual(['dough0 1 400', 'dough0 2 400', 'dough1 2 410'])
  })

  it('sets a dough aside, for the reason that was given', () => {
    const { doughs } = amendContent(closed, [out('a1', 1)])
    expect(doughs.map(({ state, stateWhy }) => [state, stateWhy])).toEqual([
      ['measured', null],
      ['set_aside', 'the other scale'],
      ['baked', null],
    ])
  })

  it('never changes what was closed, holds one reading a place, and says the last of each', () => {
    const before = structuredClone(closed)
    const places = fc.record({
      n: fc.nat(2),
      piece: fc.integer({ min: 1, max: 2 }),
      to: fc.integer({ min: 1, max: 999 }),
    })
    fc.assert(
      fc.property(fc.array(fc.oneof(places, fc.nat(2)), { maxLength: 12 }), (drawn) => {
        const accepted = drawn.map((each, at) =>
          typeof each === 'number' ? out(`a${at}`, each) : value(`a${at}`, each.n, each.piece, each.to),
        )
        const amended = amendContent(closed, accepted)
        expect(closed).toEqual(before)
        expect(amended.readings.slice(0, closed.readings.length)).toEqual(closed.readings)
        const holding = holdingReadings(amended)
        expect(new Set(holding.map(({ dough, piece }) => `${dough} ${piece}`)).size).toBe(holding.length)
        const last = new Map(
          drawn.flatMap((each) => (typeof each === 'number' ? [] : [[`dough${each.n} ${each.piece}`, each.to]])),
        )
        for (const [place, to] of last) expect(held(amended)).toContain(`${place} ${to}`)
      }),
    )
  })
})
