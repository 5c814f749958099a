import { expect, it, test } from 'vitest'
import type { TrialContent } from '@/lib/kitchen/results/content-of-trial'
import { firstDifference, type DoughField } from '@/lib/kitchen/results/first-difference'

const dough = (id: string, code: string): TrialContent['doughs'][number] => ({
  id,
  code,
  arm: 0,
  day: 1,
  plannedOrder: 1,
  state: 'measured',
  stateWhy: null,
  begunAt: '2026-02-11T05:00:00.000Z',
  doneAt: '2026-02-11T10:00:00.000Z',
  piecesMade: 4,
  piecesGood: 4,
  keptAside: 0,
})
const reading = (id: string): TrialContent['readings'][number] => ({
  id,
  dough: 'a',
  measure: 'm',
  piece: 2,
  factorLevel: null,
  repeat: 1,
  value: 912,
  valueEntered: '912',
  unitEntered: 'g',
  by: { id: 'p', name: 'Esi' },
  takenAt: '2026-02-11T11:00:00.000Z',
  receivedAt: '2026-02-11T11:00:01.000Z',
  supersedes: null,
  reason: null,
  plausibleLeast: null,
  plausibleMost: null,
})
const closed: TrialContent = {
  measures: [],
  doughs: [dough('a', '417'), dough('b', '902')],
  readings: [reading('r1'), reading('r2')],
  weighings: null,
  found: [],
  repairs: [],
}
const withDough = (change: Partial<TrialContent['doughs'][number]>): TrialContent => ({
  ...closed,
  doughs: [dough('a', '417'), { ...dough('b', '902'), ...change }],
})

test('the same is the same, also where a person is called otherwise now, or something came aside', () => {
  expect(firstDifference(closed, closed)).toBeNull()
  const renamed = closed.readings.map((each) => ({ ...each, by: { id: 'p', name: 'Esi Mensah' } }))
  expect(firstDifference(closed, { ...closed, readings: renamed })).toBeNull()
  expect(firstDifference(closed, withDough({ keptAside: 1 }))).toBeNull()
})

it.each<[DoughField, Partial<TrialContent['doughs'][number]>]>([
  ['code', { code: '903' }],
  ['arm', { arm: 1 }],
  ['day', { day: 2 }],
  ['plannedOrder', { plannedOrder: 2 }],
  ['state', { state: 'lost' }],
  ['stateWhy', { stateWhy: 'dropped' }],
  ['begunAt', { begunAt: null }],
  ['doneAt', { doneAt: null }],
  ['piecesMade', { piecesMade: 3 }],
  ['piecesGood', { piecesGood: 3 }],
])('a dough with another %s', (field, change) =>
  expect(firstDifference(closed, withDough(change))).toEqual({ kind: 'dough', code: '902', field }),
)

test('a dough that is gone, and one that was added', () => {
  expect(firstDifference(closed, { ...closed, doughs: [dough('a', '417')] })).toMatchObject({
    field: 'gone',
    code: '902',
  })
  expect(firstDifference(closed, { ...closed, doughs: [...closed.doughs, dough('c', '133')] })).toMatchObject({
    field: 'added',
    code: '133',
  })
})

const changes: Partial<TrialContent['readings'][number]>[] = [
  { value: 913 },
  { valueEntered: '913' },
  { unitEntered: 'kg' },
  { piece: 3 },
  { repeat: 2 },
  { factorLevel: '230' },
  { measure: 'n' },
  { dough: 'b' },
  { by: { id: 'q', name: 'Esi' } },
  { takenAt: '2026-02-11T11:00:00.001Z' },
  { receivedAt: '2026-02-11T11:00:02.000Z' },
  { supersedes: 'r1' },
  { reason: 'misread' },
  { plausibleLeast: 1 },
  { plausibleMost: 1 },
]
it.each(changes)('a reading with %o', (change) =>
  expect(
    firstDifference(closed, { ...closed, readings: [reading('r1'), { ...reading('r2'), ...change }] }),
  ).toMatchObject({ kind: 'reading-changed', readingId: 'r2', code: '417' }),
)

test('a reading that is gone, and one that was added, with what they say', () => {
  expect(firstDifference(closed, { ...closed, readings: [reading('r2')] })).toEqual({
    kind: 'reading-gone',
    code: '417',
    readingId: 'r1',
    measureId: 'm',
    piece: 2,
    was: '912\u00a0g (912)',
    is: null,
  })
  expect(firstDifference(closed, { ...closed, readings: [...closed.readings, reading('r3')] })).toMatchObject({
    kind: 'reading-added',
    readingId: 'r3',
    was: null,
    is: '912\u00a0g (912)',
  })
})

const weighing = (id: string): NonNullable<TrialContent['weighings']>['entries'][number] => ({
  id,
  dough: 'b',
  stage: 's',
  ingredient: 'i',
  part: 'dose',
  how: 'weighed',
  massG: 12,
  massEntered: '12',
  unitEntered: 'g',
  by: { id: 'p', name: 'Esi' },
  takenAt: '2026-02-11T05:01:00.000Z',
  receivedAt: '2026-02-11T05:01:01.000Z',
  supersedes: null,
  reason: null,
})
const line = {
  stage: { id: 's', kind: 'final_dough' as const, name: '' },
  ingredient: { id: 'i', name: 'Malt' },
  part: 'dose' as const,
  isDose: true,
  targets: [{ arm: 0, massG: 12, stepG: 0.1, toleranceG: 0.6 }],
}
const withWeighings = (...entries: ReturnType<typeof weighing>[]): TrialContent => ({
  ...closed,
  weighings: { lines: [line], entries },
})

it.each<Partial<ReturnType<typeof weighing>>>([
  { massG: 12.5 },
  { massEntered: '12.5' },
  { unitEntered: 'kg' },
  { how: 'ticked' },
  { part: 'line' },
  { ingredient: 'j' },
  { dough: 'a' },
  { receivedAt: '2026-02-11T04:01:01.000Z' },
  { supersedes: 'w1' },
  { by: { id: 'q', name: 'Esi' } },
])('a weighing with %o', (change) =>
  expect(firstDifference(withWeighings(weighing('w1')), withWeighings({ ...weighing('w1'), ...change }))).toEqual({
    kind: 'weighing-changed',
    code: '902',
    ingredient: 'Malt',
  }),
)

test('a weighing that is gone, and one that was added, also to a trial that was closed before there were any', () => {
  const [none, one] = [withWeighings(), withWeighings(weighing('w1'))]
  expect(firstDifference(one, one)).toBeNull()
  expect(firstDifference(one, none)).toMatchObject({ kind: 'weighing-gone', code: '902' })
  expect(firstDifference(none, one)).toMatchObject({ kind: 'weighing-added', code: '902' })
  expect(firstDifference(closed, none)).toBeNull()
  expect(firstDifference(closed, one)).toMatchObject({ kind: 'weighing-added', ingredient: 'Malt' })
})
