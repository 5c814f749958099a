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
