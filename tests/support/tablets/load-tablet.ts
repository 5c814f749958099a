import { AsyncLocalStorage } from 'node:async_hooks'
import { vi } from 'vitest'
import type { keepCause } from '../../../lib/station/keep/keep-cause'
import type { keepNote } from '../../../lib/station/keep/keep-note'
import type { keepReading } from '../../../lib/station/keep/keep-reading'
import type { sendAgain } from '../../../lib/station/keep/send-again'
import type { sendOutbox } from '../../../lib/station/talk/send-outbox'
import { storeInMemory, type StoreInMemory } from './store-in-memory'

/** What becomes of a request that is out. */
export type Fate =
  /** It comes in, and its answer back. */
  | 'through'
  /** It never comes in. */
  | 'cut'
  /** It comes in, and its answer is lost. */
  | 'answer lost'
  /** It never comes in; a hotel's page answers in the book's place. */
  | 'not the book'
  /** It comes in, and of its answer only the first half comes back. */
  | 'half an answer'
  /** The book fails in the middle, and keeps nothing. */
  | 'fails'

type Sent = { address: string; body: unknown; answer(response: Response): void; fail(): void }

/** How the book answers a request of a tablet: status and JSON. */
export type Book = (address: string, body: unknown) => Promise<{ status: number; body: unknown }>

/** On which tablet something runs: the page's globals are one for all of them here. */
const here = new AsyncLocalStorage<LoadedTablet>()

type Modules = {
  keepNote: typeof keepNote
  keepReading: typeof keepReading
  keepCause: typeof keepCause
  sendOutbox: typeof sendOutbox
  sendAgain: typeof sendAgain
}

/** One tablet: the very modules that a page of it runs, over a store of its own and a network that a test is the master of. */
export class LoadedTablet {
  readonly store: StoreInMemory
  /** Requests that are out, the oldest first. */
  wire: Sent[] = []
  isLocked = false
  private readonly modules: Modules

  constructor(store: StoreInMemory, modules: Modules) {
    this.store = store
    this.modules = modules
  }

  /** Runs something of the tablet's own on it. */
  on<Value>(work: (modules: Modules) => Value): Value {
    return here.run(this, () => work(this.modules))
  }

  /** The page is gone with what it waited for, and comes up anew; what was out is out. */
  restart(): void {
    this.wire = []
    this.isLocked = false
  }

  /** Lets the oldest request meet its fate. */
  async meet(fate: Fate, book: Book): Promise<void> {
    const sent = this.wire.shift()
    if (!sent) return
    if (fate === 'cut') sent.fail()
    else if (fate === 'not the book') sent.answer(new Response('<h1>Welcome</h1>', { status: 200 }))
    else if (fate === 'fails') sent.answer(Response.json({ refusal: 'away' }, { status: 503 }))
    else {
      const { status, body } = await book(sent.address, sent.body)
      const { entries } = body as { entries?: unknown[] }
      const half = entries && { entries: entries.slice(0, Math.floor(entries.length / 2)) }
      if (fate === 'answer lost') sent.fail()
      else sent.answer(Response.json(fate === 'half an answer' && half ? half : body, { status }))
    }
  }
}

/** What a page has around it, of whichever tablet it is. */
export function stubPages(): void {
  vi.stubGlobal('navigator', {
    locks: {
      async request(_name: string, _how: object, work: (lock: object | null) => Promise<unknown>) {
        const tablet = here.getStore()!
        if (tablet.isLocked) return work(null)
        tablet.isLocked = true
        try {
          return await work({})
        } finally {
          tablet.isLocked = false
        }
      },
    },
  })
  // A page that comes back by itself after a pause would do so at a time of its own: here it is told to.
  const wait = globalThis.setTimeout
  vi.stubGlobal('setTimeout', (work: () => void, ms: number) => (here.getStore() ? 0 : wait(work, ms)))
  vi.stubGlobal('fetch', (address: string, { body }: { body?: string }) => {
    const tablet = here.getStore()!
    return new Promise<Response>((answer, reject) => {
      const fail = () => reject(new TypeError('no network'))
      tablet.wire.push({ address, body: body === undefined ? undefined : JSON.parse(body), answer, fail })
    })
  })
}

/** Loads the modules of a page anew, over a store. */
export async function loadTablet(): Promise<LoadedTablet> {
  const store = storeInMemory()
  vi.resetModules()
  vi.doMock('@/lib/station/keep/tablet', () => store)
  const modules = await Promise.all([
    import('../../../lib/station/keep/keep-note'),
    import('../../../lib/station/keep/keep-reading'),
    import('../../../lib/station/keep/keep-cause'),
    import('../../../lib/station/talk/send-outbox'),
    import('../../../lib/station/keep/send-again'),
  ])
  return new LoadedTablet(store, Object.assign({}, ...modules) as Modules)
}
