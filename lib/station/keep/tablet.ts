import { Dexie } from 'dexie'
import type { Holder, OutboxEntry } from '../outbox/entry'
import type { Floor, StationFacts } from './facts'

/** Single things that the tablet keeps, each under its name. */
export type Kept = {
  station: StationFacts
  /** Whether the desk has shut this tablet out. */
  withdrawn: boolean
  /** As last fetched, ms. */
  floor: { value: Floor; at: number }
  /** Who is on it, and when they last touched it, ms. */
  on: { personId: string; touchedAt: number }
  /** Which screen is open. */
  at: {
    batchId: string
    measureId: string | null
    piece: number | null
    repeat: number | null
    /** Opened to put right what stands there. */
    isFix?: true
  }
  /** What a note is being written of: a dough, or the shift. */
  noting: { batchId: string | null; code: string | null }
  /** The last counter that an entry was given. */
  counter: number
}

const database = new Dexie('evendough-station', { chromeTransactionDurability: 'strict' })
database.version(1).stores({ outbox: 'id, state, counter', holders: 'personId', drafts: 'place', kept: 'name' })

// What was fetched says more since, and is fetched again.
database.version(2).upgrade((upgrade) => upgrade.table('kept').delete('floor'))

// With what the shift before left.
database.version(3).upgrade((upgrade) => upgrade.table('kept').delete('floor'))

/** Everything on the tablet. A change is on its disk when its promise is kept, not before. */
export const tablet = {
  outbox: database.table<OutboxEntry, string>('outbox'),
  holders: database.table<Holder, string>('holders'),
  drafts: database.table<{ place: string; text: string }, string>('drafts'),
  kept: database.table<{ name: string; value: unknown }, string>('kept'),
}

/** Does several changes whole or not at all. Within it nothing is awaited but the tablet itself. */
export function inOne<Value>(work: () => Promise<Value>): Promise<Value> {
  return database.transaction('rw', database.tables, work)
}

/** What is kept under a name; undefined for nothing. */
export async function recall<Name extends keyof Kept>(name: Name): Promise<Kept[Name] | undefined> {
  return (await tablet.kept.get(name))?.value as Kept[Name] | undefined
}

/** Keeps something under a name, in place of what was there. */
export async function remember<Name extends keyof Kept>(name: Name, value: Kept[Name]): Promise<void> {
  await tablet.kept.put({ name, value })
}

/** Lets go of what is kept under a name. */
export async function forget(name: keyof Kept): Promise<void> {
  await tablet.kept.delete(name)
}
