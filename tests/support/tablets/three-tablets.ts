import fc from 'fast-check'
import { expect, vi } from 'vitest'
import type { KeptBy } from '../../../lib/station/keep/keep-entry'
import { loadTablet, stubPages, type Book, type Fate, type LoadedTablet } from './load-tablet'

/** What happens at a tablet, at one of its two people's hands or without them. */
export type Move =
  | { do: 'note' | 'cause' | 'cause of no dough'; tablet: number; person: number }
  | { do: 'read'; tablet: number; person: number; piece: number }
  | { do: 'send' | 'restart' | 'send again'; tablet: number }
  | { do: 'meet'; tablet: number; fate: Fate }
  /** A request that was out once comes in again, whoever has its answer by then. */
  | { do: 'repeat'; which: number }
  | { do: 'clock'; hours: number }
  /** The book is started anew from a copy of an earlier moment, or of this one. */
  | { do: 'put back'; to: number }
  /** A tablet hears that the book was started. */
  | { do: 'hear'; tablet: number }

const tablet = fc.nat({ max: 2 })
const person = fc.nat({ max: 1 })
const fates: Fate[] = ['cut', 'answer lost', 'not the book', 'half an answer', 'fails']

/** Moves in any order, often many; what is kept and what meets its fate come most often. */
export const anyMoves = (most: number) =>
  fc.array(
    fc.oneof(
      { weight: 3, arbitrary: fc.record({ do: fc.constantFrom('note' as const, 'cause' as const), tablet, person }) },
      { weight: 1, arbitrary: fc.record({ do: fc.constant('cause of no dough' as const), tablet, person }) },
      {
        weight: 3,
        arbitrary: fc.record({
          do: fc.constant('read' as const),
          tablet,
          person,
          piece: fc.integer({ min: 1, max: 4 }),
        }),
      },
      { weight: 4, arbitrary: fc.record({ do: fc.constant('send' as const), tablet }) },
      { weight: 1, arbitrary: fc.record({ do: fc.constantFrom('restart' as const, 'send again' as const), tablet }) },
      {
        weight: 3,
        arbitrary: fc.record({ do: fc.constant('meet' as const), tablet, fate: fc.constantFrom(...fates) }),
      },
      {
        weight: 3,
        arbitrary: fc.record({ do: fc.constant('meet' as const), tablet, fate: fc.constant('through' as const) }),
      },
      { weight: 1, arbitrary: fc.record({ do: fc.constant('repeat' as const), which: fc.nat() }) },
      {
        weight: 1,
        arbitrary: fc.record({ do: fc.constant('clock' as const), hours: fc.constantFrom(-24 * 365, -1, 1, 24 * 365) }),
      },
      { weight: 1, arbitrary: fc.record({ do: fc.constant('put back' as const), to: fc.nat() }) },
      { weight: 2, arbitrary: fc.record({ do: fc.constant('hear' as const), tablet }) },
    ),
    { maxLength: most, size: 'max' },
  )

/** What the tablets are at, and who is on them. */
export type Scene = {
  book: Book
  /** What the book holds, by its own tables: `id hash` of each entry in the order in which they came in, and what lies aside. */
  held(): Promise<{ book: string[]; aside: string[] }>
  /** Makes the book what it was after so many of the entries that came in, counted round again from none. */
  putBack(to: number): Promise<void>
  batchId: string
  /** Of no dough. */
  goneId: string
  measureId: string
  people: { personId: string; personName: string }[]
}

type Row = {
  id: string
  hash: string
  counter: number
  state: string
  personId: string
  refusal: string | null
  words: string | null
}

const settled = async () => {
  // What a page does with an answer takes some turns of the loop, and none of them a time.
  for (let turn = 0; turn < 8; turn += 1) await new Promise((resolve) => setImmediate(resolve))
}

/**
 * Lets moves happen on three tablets, then the network come back for good, and holds the tablets' stores against the book:
 * what was kept is there, once, in its order, and nothing that was kept is gone.
 */
export async function playTablets(moves: readonly Move[], startAt: Date, sceneOf: () => Promise<Scene>): Promise<void> {
  vi.useFakeTimers({ toFake: ['Date'], now: startAt })
  stubPages()
  try {
    const scene = await sceneOf()
    const tablets = [await loadTablet(), await loadTablet(), await loadTablet()]
    for (const { store } of tablets) {
      await store.remember('station', { book: 'start 0' })
      for (const { personId, personName } of scene.people)
        await store.tablet.holders.put({
          personId,
          name: personName,
          token: `token ${personId}`,
          endsAt: 0,
          asks: 'nothing',
        })
    }
    const kept = tablets.map((): string[] => [])
    let starts = 0
    const requests: { address: string; body: unknown }[] = []
    const book: Book = async (address, body) => {
      requests.push({ address, body })
      return scene.book(address, body)
    }
    for (const move of moves) {
      await make(move)
      await settled()
      await neverConfused()
    }
    for (const each of tablets) {
      each.restart()
      await hear(each)
      await drain(each)
    }
    await holdAgainstBook()

    async function make(move: Move): Promise<void> {
      if (move.do === 'clock') return void vi.setSystemTime(Date.now() + move.hours * 3_600_000)
      if (move.do === 'repeat') {
        const again = requests[move.which % Math.max(1, requests.length)]
        if (again) await scene.book(again.address, again.body)
        return
      }
      if (move.do === 'put back') {
        starts += 1
        return scene.putBack(move.to)
      }
      const at = move.tablet
      const on = tablets[at]!
      switch (move.do) {
        case 'send':
          void on.on(({ sendOutbox }) => sendOutbox())
          return
        case 'restart': {
          on.restart()
          return
        }
        case 'hear':
          return hear(on)
        case 'meet':
          return on.meet(move.fate, book)
        case 'send again': {
          const refused = (await rowsOf(on)).find(({ state }) => state === 'attention')
          if (refused) await on.on(({ sendAgain }) => sendAgain(refused as never))
          return
        }
        default: {
          const by = { ...scene.people[move.person]!, stationId: `tablet ${at}`, shiftToken: 'token' }
          const before = new Set((await rowsOf(on)).map(({ id }) => id))
          await on.on((modules) => keepOn(modules, move, scene, by))
          kept[at]!.push(...(await rowsOf(on)).flatMap(({ id }) => (before.has(id) ? [] : [id])))
        }
      }
    }

    /** What the tablet fetches says by which word the book runs now. */
    async function hear({ store }: LoadedTablet): Promise<void> {
      await store.remember('station', { book: `start ${starts}` })
    }

    /** Whether a tablet has asked the book as it runs now for what that took from it. */
    async function hasCompared({ store }: LoadedTablet): Promise<boolean> {
      return (await store.recall('compared')) === `start ${starts}`
    }

    /** What a tablet says of an entry is so at any moment, but for a book that was put back, until it has asked that. */
    async function neverConfused(): Promise<void> {
      const { book: inBook, aside } = await scene.held()
      for (const each of tablets) {
        if (starts > 0 && !(await hasCompared(each))) continue
        for (const { id, hash, state } of await rowsOf(each)) {
          if (state === 'book') expect(inBook).toContain(`${id} ${hash}`)
          if (state === 'aside') expect(aside).toContain(`${id} ${hash}`)
        }
      }
    }

    async function holdAgainstBook(): Promise<void> {
      const { book: inBook, aside } = await scene.held()
      expect(new Set(inBook).size).toBe(inBook.length)
      expect(new Set(aside).size).toBe(aside.length)
      const all = await Promise.all(tablets.map(rowsOf))
      expect(inBook.length + aside.length).toBe(all.flat().filter(({ state }) => state !== 'attention').length)
      for (const [at, rows] of all.entries()) {
        expect(rows.map(({ id }) => id)).toEqual(kept[at])
        expect(rows.map(({ counter }) => counter)).toEqual(rows.map((_, place) => place + 1))
        for (const { id, hash, state, refusal, words } of rows) {
          expect(['book', 'aside', 'attention']).toContain(state)
          expect(inBook.includes(`${id} ${hash}`)).toBe(state === 'book')
          expect(aside.includes(`${id} ${hash}`)).toBe(state === 'aside')
          // What is refused is there with the book's words, for somebody to look at.
          if (state === 'attention') expect([refusal, words]).toEqual([expect.any(String), expect.any(String)])
        }
        // What came in before a tablet heard that the book was put back stands before what it gives back.
        if (starts > 0) continue
        const own = rows.map(({ id, hash }) => `${id} ${hash}`)
        expect(inBook.filter((each) => own.includes(each))).toEqual(own.filter((each) => inBook.includes(each)))
      }
    }

    async function drain(each: LoadedTablet): Promise<void> {
      const isAtRest = async () =>
        (await hasCompared(each)) && (await rowsOf(each)).every(({ state }) => state !== 'waiting')
      for (let tries = 0; !(await isAtRest()); tries += 1) {
        expect(tries, 'a tablet that has a network sends all that waits').toBeLessThan(50)
        void each.on(({ sendOutbox }) => sendOutbox())
        await settled()
        while (each.wire.length > 0) {
          await each.meet('through', book)
          await settled()
        }
      }
    }
  } finally {
    vi.unstubAllGlobals()
    vi.useRealTimers()
  }
}

/** Whoever is there keeps something; of a place that has its reading on this tablet already, nothing. */
async function keepOn(
  { keepNote, keepCause, keepReading }: Parameters<Parameters<LoadedTablet['on']>[0]>[0],
  move: Extract<Move, { person: number }>,
  { batchId, goneId, measureId }: Scene,
  by: KeptBy,
): Promise<void> {
  if (move.do === 'note') await keepNote({ of: { batchId, code: '101' }, text: 'Sticky.', forNext: false, by })
  else if (move.do === 'read')
    await keepReading({
      place: { batchId, measureId, piece: move.piece, repeat: 1 },
      factorLevel: null,
      value: '884',
      unit: 'g',
      confirmed: true,
      by,
      shown: { code: '101', measure: 'Loaf weight' },
    })
  else
    await keepCause({
      of: { batchId: move.do === 'cause' ? batchId : goneId, code: '101' },
      what: 'The oven went off',
      by,
    })
}

async function rowsOf({ store }: LoadedTablet): Promise<Row[]> {
  return ((await store.tablet.outbox.toArray()) as Row[]).sort((a, b) => a.counter - b.counter)
}
