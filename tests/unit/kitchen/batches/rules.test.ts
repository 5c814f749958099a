import { describe, expect, it } from 'vitest'
import {
  byTurn,
  isOver,
  mayMove,
  needsCleanDown,
  nextState,
  nextToBegin,
  undoMs,
  whyNoUndo,
  type MixedBatch,
} from '@/lib/kitchen/batches/rules'
import type { BatchStateName } from '@/lib/kitchen/batches/batch-state.input'

const states: BatchStateName[] = [
  'waiting',
  'weighing',
  'in_work',
  'baked',
  'measured',
  'lost',
  'set_aside',
  'not_baked',
]

describe('a batch', () => {
  it('goes one step at a time, or is taken out while it is under way', () => {
    const moves = states.flatMap((from) => states.filter((to) => mayMove(from, to)).map((to) => `${from} ${to}`))
    expect(moves).toEqual([
      'waiting not_baked',
      'weighing in_work',
      'weighing lost',
      'weighing set_aside',
      'in_work baked',
      'in_work lost',
      'in_work set_aside',
      'baked measured',
      'baked lost',
      'baked set_aside',
    ])
  })

  it('knows its next step, which is one it may take', () => {
    for (const state of states) {
      const next = nextState(state)
      if (next) expect(mayMove(state, next)).toBe(true)
    }
    expect(states.filter((state) => nextState(state) === null)).toEqual([
      'waiting',
      'measured',
      'lost',
      'set_aside',
      'not_baked',
    ])
    expect(states.filter(isOver)).toEqual(['measured', 'lost', 'set_aside', 'not_baked'])
  })
})

const batch = (id: string, dayNumber: number, plannedOrder: number, more: Partial<MixedBatch> = {}): MixedBatch => ({
  id,
  dayNumber,
  plannedOrder,
  turn: plannedOrder,
  state: 'waiting',
  cleanDownBefore: false,
  begunAt: null,
  leaves: ['gluten'],
  adds: (more.leaves ?? []).filter((each) => each !== 'gluten'),
  ...more,
})
const at = (minute: number) => new Date(Date.UTC(2026, 2, 2, 4, minute))

describe('the order', () => {
  it('is by mixing day, then by the place drawn', () => {
    expect([batch('d', 2, 1), batch('b', 1, 10), batch('a', 1, 2)].sort(byTurn).map(({ id }) => id)).toEqual([
      'a',
      'b',
      'd',
    ])
  })

  it('follows the places that were exchanged', () => {
    const exchanged = [batch('a', 1, 1, { turn: 2 }), batch('b', 1, 2, { turn: 1 }), batch('c', 2, 1)]
    expect([...exchanged].sort(byTurn).map(({ id }) => id)).toEqual(['b', 'a', 'c'])
    expect(nextToBegin(exchanged)?.id).toBe('b')
  })

  it('puts the first that still waits next', () => {
    expect(nextToBegin([batch('b', 1, 2), batch('a', 1, 1, { state: 'lost' }), batch('c', 2, 1)])?.id).toBe('b')
    expect(nextToBegin([batch('a', 1, 1, { state: 'measured' })])).toBeNull()
  })
})

describe('a clean-down', () => {
  const milk = { leaves: ['gluten', 'milk'] }

  it('is asked for where the plan says so', () => {
    expect(needsCleanDown(batch('a', 1, 1, { cleanDownBefore: true }), [])).toBe(true)
  })

  it('is asked for when batches were swapped and the later one brought what this one must not carry', () => {
    const plain = batch('a', 1, 1)
    expect(needsCleanDown(plain, [plain, batch('b', 1, 2, { ...milk, begunAt: at(1) })])).toBe(true)
    expect(needsCleanDown(plain, [plain, batch('b', 2, 1, { ...milk, begunAt: at(1) })])).toBe(true)
    expect(
      needsCleanDown(plain, [
        plain,
        batch('b', 1, 2, { leaves: ['gluten', 'an unchecked ingredient'], begunAt: at(1) }),
      ]),
    ).toBe(true)
  })

  it('is asked for when what comes right before was to be cleaned away by a batch between, which was not baked', () => {
    const soy = { leaves: ['gluten', 'soy'] }
    const [a, b, c] = [
      batch('a', 1, 1, { ...milk, state: 'weighing', begunAt: at(1) }),
      batch('b', 1, 2, { ...soy, cleanDownBefore: true, state: 'not_baked' }),
      batch('c', 1, 3, soy),
    ]
    expect(needsCleanDown(c, [a, b, c])).toBe(true)
    const baked = { ...b, state: 'weighing' as const, begunAt: at(2) }
    expect(needsCleanDown(c, [a, baked, c])).toBe(false)
  })

  it('is told of a batch that waits, by what waits before it', () => {
    const [plain, withMilk] = [batch('a', 1, 1, { turn: 2 }), batch('b', 1, 2, { ...milk, turn: 1 })]
    expect(needsCleanDown(plain, [plain, withMilk])).toBe(false)
    expect(needsCleanDown(plain, [plain, withMilk], withMilk)).toBe(true)
    expect(needsCleanDown(withMilk, [plain, withMilk], plain)).toBe(false)
  })

  it('is not asked for in the planned order, before anything was mixed, or when nothing is added', () => {
    const plain = batch('b', 1, 2)
    expect(needsCleanDown(plain, [batch('a', 1, 1, { begunAt: at(1) }), plain])).toBe(false)
    expect(needsCleanDown(plain, [plain, batch('c', 1, 3, milk)])).toBe(false)
    expect(needsCleanDown(plain, [plain, batch('c', 1, 3, { begunAt: at(1) })])).toBe(false)
    const withMilk = batch('d', 1, 1, milk)
    expect(needsCleanDown(withMilk, [withMilk, batch('e', 1, 2, { begunAt: at(1) })])).toBe(false)
  })
})

describe('whether a move may be undone', () => {
  const now = new Date('2026-03-02T04:00:10Z')
  const moved = {
    revision: 3,
    movedFrom: 'waiting' as const,
    movedAt: new Date('2026-03-02T04:00:00Z'),
    movedById: 'esi',
    movedRevision: 3,
  }
  const why = (change: object = {}, personId = 'esi') => whyNoUndo({ batch: { ...moved, ...change }, personId, now })

  it('is for whoever made it, for ten seconds, while nothing was written since', () => {
    expect(why()).toBeNull()
    expect(why({}, 'lars')).toBe('undo-not-yours')
    expect(why({ movedAt: new Date(now.getTime() - undoMs - 1) })).toBe('undo-too-late')
    expect(why({ movedAt: new Date(now.getTime() + undoMs + 1) })).toBe('undo-too-late')
    expect(why({ revision: 4 })).toBe('undo-built-on')
    expect(why({ movedFrom: null, movedAt: null, movedById: null, movedRevision: null })).toBe('nothing-to-undo')
  })
})
