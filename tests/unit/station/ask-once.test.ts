import { beforeEach, describe, expect, it, vi } from 'vitest'
import type { askOnce } from '@/lib/station/talk/ask-once'
import type { bakeAgain, exchange, takeOut } from '@/lib/station/talk/repair-dough'
import { storeInMemory, type StoreInMemory } from '@/tests/support/tablets/store-in-memory'

type Request = { address: string; once: string | undefined; body: unknown }
type Reply = { status: number; body: unknown } | null

let store: StoreInMemory
let asked: Request[]
/** What the book answers to each, in their order; then nothing. */
let replies: Reply[]
let modules: {
  askOnce: typeof askOnce
  takeOut: typeof takeOut
  bakeAgain: typeof bakeAgain
  exchange: typeof exchange
}
const sendOutbox = vi.fn(async () => {})
const refresh = vi.fn(async () => {})

const done: Reply = { status: 200, body: {} }
const refused: Reply = { status: 409, body: { refusal: 'baked-again-already', words: 'It is baked again already.' } }

beforeEach(async () => {
  store = storeInMemory()
  asked = []
  replies = []
  sendOutbox.mockReset()
  refresh.mockReset()
  vi.resetModules()
  vi.doMock('@/lib/station/keep/tablet', () => store)
  vi.doMock('@/lib/station/talk/ask-as', () => ({
    askAs: async (_: string, address: string, { once, body }: Omit<Request, 'address'>) => {
      asked.push({ address, once, body })
      return replies.shift() ?? null
    },
  }))
  vi.doMock('@/lib/station/talk/send-outbox', () => ({ sendOutbox }))
  vi.doMock('@/lib/station/talk/refresh', () => ({ refresh }))
  modules = {
    ...(await import('@/lib/station/talk/ask-once')),
    ...(await import('@/lib/station/talk/repair-dough')),
  }
})

const again = (batchId = 'dough', personId = 'esi') => modules.bakeAgain(batchId, personId)
const kept = (state: string, change: object = {}) =>
  store.tablet.outbox.put({ id: `entry ${state}`, state, personId: 'esi', payload: { batchId: 'dough' }, ...change })
const seen = (revision: number | null) =>
  store.remember('floor', { value: { doughs: revision === null ? [] : [{ id: 'dough', revision }] }, at: 0 })
const take = () => modules.takeOut({ batchId: 'dough', to: 'lost', why: 'The dough is lost', personId: 'esi' })

describe('a tap by which a dough is baked again', () => {
  it('has one name until the book has answered it, over a reload as well', async () => {
    replies = [null, { status: 503, body: {} }, done]
    expect(await again()).toEqual({ outcome: 'unknown' })
    expect(await again()).toEqual({ outcome: 'unknown' })
    expect(await again()).toEqual({ outcome: 'done' })
    expect(new Set(asked.map(({ once }) => once)).size).toBe(1)
    replies = [done]
    await again()
    expect(asked.at(-1)?.once).not.toBe(asked[0]?.once)
  })

  it('has another name for another dough, and for somebody else', async () => {
    await again()
    await again('other')
    await again('other', 'ravi')
    expect(new Set(asked.map(({ once }) => once)).size).toBe(3)
  })

  it('that the book refuses is answered, with its words', async () => {
    replies = [refused]
    expect(await again()).toEqual({
      outcome: 'refused',
      code: 'baked-again-already',
      words: 'It is baked again already.',
    })
    expect(await store.recall('asking')).toBeUndefined()
    expect(refresh).toHaveBeenCalledOnce()
  })
})

describe('a tap by which two doughs exchange their places', () => {
  const [one, other] = [
    { id: 'a', turn: 1 },
    { id: 'b', turn: 3 },
  ]

  it('asks the very same again after a lost answer, though the tablet has seen them at other places since', async () => {
    await modules.exchange(one, other, 'The oven is not free', 'esi')
    replies = [done]
    await modules.exchange({ ...other, turn: 1 }, { ...one, turn: 3 }, 'The oven is not free', 'esi')
    expect(asked[1]).toEqual(asked[0])
    expect(asked[0]?.body).toEqual({ batchId: 'a', seenTurn: 1, otherId: 'b', why: 'The oven is not free' })
  })

  it('is another one for another reason, and once the book has answered', async () => {
    replies = [null, done, done]
    await modules.exchange(one, other, 'The oven is not free', 'esi')
    await modules.exchange(one, other, 'The tins are in use', 'esi')
    await modules.exchange(one, other, 'The tins are in use', 'esi')
    expect(new Set(asked.map(({ once }) => once)).size).toBe(3)
  })
})

describe('a dough that is taken out', () => {
  it('is so once the book has what was noted of it, as it stands there then', async () => {
    await kept('waiting')
    await seen(2)
    expect(await take()).toEqual({ outcome: 'unsent' })
    expect(asked).toEqual([])
    sendOutbox.mockImplementationOnce(() => kept('book', { id: 'entry waiting' }))
    refresh.mockImplementationOnce(() => seen(5))
    replies = [done]
    expect(await take()).toEqual({ outcome: 'done' })
    expect(asked.map(({ body }) => body)).toEqual([
      { batchId: 'dough', seenRevision: 5, to: 'lost', why: 'The dough is lost' },
    ])
    expect(await store.recall('out')).toMatchObject({ batchId: 'dough', personId: 'esi', revision: 6 })
  })

  it.each([
    ['of another dough', 'waiting', { payload: { batchId: 'other' } }],
    ['of somebody who has to log on first', 'waiting', { personId: 'ravi' }],
    ['that needs attention', 'attention', {}],
    ['that is in the book', 'book', {}],
  ])('waits for nothing %s', async (_, state, change) => {
    await kept(state, change)
    await seen(2)
    replies = [done]
    expect(await take()).toEqual({ outcome: 'done' })
  })

  it('is not taken out again where it is out by the book', async () => {
    await seen(null)
    expect(await take()).toEqual({ outcome: 'done' })
    expect(asked).toEqual([])
    expect(await store.recall('out')).toBeUndefined()
  })

  it('of which nobody knows is not said to be out', async () => {
    await seen(2)
    expect(await take()).toEqual({ outcome: 'unknown' })
    expect(await store.recall('out')).toBeUndefined()
  })
})
