import { Dexie } from 'dexie'
import { noLooks } from '../../kitchen/steps/looks.input'
import type { StepKind } from '../../kitchen/steps/step-kinds.input'
import type { Holder, OutboxEntry } from '../outbox/entry'
import type { TabletPhoto, TabletPhotoPiece } from '../photo/tablet-photo'
import type { WaterChange } from '../outbox/water-in-dough'
import type { Floor, StationFacts } from './facts'
import type { KeptList } from './weigh-facts'

/** Which screen is open. */
export type At = {
  batchId: string
  measureId: string | null
  piece: number | null
  repeat: number | null
  /** The dough is weighed out: the line that is open, or all of them. */
  weigh?: string | null
  /** A step is entered with what there is to say of it; the one that was wrong, where it is put right. */
  step?: { kind: StepKind; wrongId: string | null }
  /** Its pieces are counted. */
  count?: true
  /** Two that wait exchange their places; the dough is the next of them. */
  exchange?: true
  /** Opened to put right what stands there. */
  isFix?: true
  /** Opened to say how much of the line's water was held back, or added. */
  water?: WaterChange
  /** A volume is read step by step: by the reading without the loaf that there is, or a new one; or it was, and is on the pad. */
  displace?: 'guided' | 'anew' | 'put'
}

/** Single things that the tablet keeps, each under its name. */
export type Kept = {
  station: StationFacts
  /** Whether the desk has shut this tablet out. */
  withdrawn: boolean
  /** The book, by the word for it, that was last asked whether it has all that it took from here. */
  compared: string
  /** As last fetched, ms. */
  floor: { value: Floor; at: number }
  /** Who is on it, and when they last touched it, ms. */
  on: { personId: string; touchedAt: number }
  at: At
  /** What was tapped for the book to do, until it has said what came of that: the same, asked again, is the same tap. */
  asking: { id: string; personId: string; address: string; about: string; body: object }
  /** The dough that was begun here last, as the book counts its changes, and when, ms. */
  begun: { batchId: string; personId: string; revision: number; at: number }
  /** The dough that was taken out here last, likewise. */
  out: { batchId: string; personId: string; revision: number; at: number }
  /** What a note is being written of: a dough, or the shift. */
  noting: { batchId: string | null; code: string | null }
  /** What a photo is being taken of: a dough, a piece of it, or the label of a lot that was typed at one of its lines. */
  photographing: {
    batchId: string
    code: string
    piece: number | null
    label?: { ingredientId: string; ingredient: string; code: string }
  }
  /** The checks of the day are open: all of them, or of one instrument. */
  checking: { instrumentId: string | null; isFromPad?: true }
  /** What a volume gauge showed without a loaf, mL as it was typed, and when, ms by the tablet's clock. */
  emptyGauge: { value: string; at: number; who: string }
  /** Timers that ran out and were silenced on this tablet, by the steps that they run from. */
  silenced: string[]
  /** The dough that something is noted to have gone wrong with. */
  wrong: { batchId: string; code: string }
  /** The last counter that an entry was given. */
  counter: number
}

const database = new Dexie('evendough-station', { chromeTransactionDurability: 'strict' })
database.version(1).stores({ outbox: 'id, state, counter', holders: 'personId', drafts: 'place', kept: 'name' })

// What was fetched says more since, and is fetched again.
for (const version of [2, 3]) database.version(version).upgrade((upgrade) => upgrade.table('kept').delete('floor'))
database.version(4).stores({ lists: 'batchId' })
database.version(5).upgrade((upgrade) => upgrade.table('kept').delete('floor'))
// Weights that were fetched before lots were told stay, because somebody without a network weighs by them.
database.version(6).upgrade((upgrade) =>
  upgrade
    .table<KeptList>('lists')
    .toCollection()
    .modify(({ list }) => {
      for (const line of list.lines) {
        line.lots ??= []
        if (line.stands) line.stands.lots ??= []
      }
    }),
)
database.version(7).stores({ photos: 'id, state', photoPieces: '[photoId+number], photoId' })

// A floor from before checks and counts were told has none, and stays: doughs are read by it without a network.
database.version(8).upgrade((upgrade) =>
  upgrade
    .table<{ name: string; value: { value: Partial<Floor> } }>('kept')
    .where({ name: 'floor' })
    .modify(({ value: { value: floor } }) => {
      floor.instruments ??= []
      for (const dough of floor.doughs ?? []) dough.count ??= null
      floor.day ??= { beganAt: new Date(0).toISOString(), endsAt: new Date(0).toISOString() }
    }),
)

// As a floor from before volume gauges were checked: nothing in it is one.
database.version(9).upgrade((upgrade) =>
  upgrade
    .table<{ name: string; value: { value: Partial<Floor> } }>('kept')
    .where({ name: 'floor' })
    .modify(({ value: { value: floor } }) => {
      for (const { measures } of floor.doughs ?? []) for (const measure of measures) measure.byDisplacement ??= false
      for (const instrument of floor.instruments ?? []) {
        Object.assign(instrument, { blockMl: null, volumeMl: null })
        if (instrument.last) instrument.last.offMl ??= null
      }
    }),
)

// What was fetched before the bakery could say otherwise.
database.version(10).upgrade((upgrade) =>
  upgrade
    .table<{ name: string; value: { bakery: Partial<StationFacts['bakery']> } }>('kept')
    .where({ name: 'station' })
    .modify(({ value: { bakery } }) => {
      bakery.stationIdleMin ??= 10
    }),
)

// As a floor from before water was told and anybody was called to look: neither is, until it is fetched again.
database.version(11).upgrade((upgrade) =>
  upgrade
    .table<{ name: string; value: { value: Partial<Floor> } }>('kept')
    .where({ name: 'floor' })
    .modify(({ value: { value: floor } }) => {
      floor.looks ??= noLooks
      for (const dough of floor.doughs ?? []) {
        dough.water ??= null
        dough.begunAt ??= null
        for (const measure of dough.measures) measure.code ??= null
      }
    }),
)

// As a floor from before repairs were offered: nothing is out, and nothing is told to wait. A tap of an older build that
// the book has not answered is a new one: what it asked for names what it saw, and is not done twice.
database.version(13).upgrade(async (upgrade) => {
  const kept = upgrade.table<{ name: string; value: { value: Partial<Floor> } }>('kept')
  await kept.delete('beginning')
  await kept.where({ name: 'floor' }).modify(({ value: { value: floor } }) => {
    floor.out ??= []
    for (const dough of floor.doughs ?? []) dough.revision ??= 0
    for (const dough of floor.next ?? []) Object.assign(dough, { turn: 0, after: [] })
  })
})

/** Everything on the tablet. A change is on its disk when its promise is kept, not before. */
export const tablet = {
  outbox: database.table<OutboxEntry, string>('outbox'),
  holders: database.table<Holder, string>('holders'),
  lists: database.table<KeptList, string>('lists'),
  drafts: database.table<{ place: string; text: string }, string>('drafts'),
  photos: database.table<TabletPhoto, string>('photos'),
  photoPieces: database.table<TabletPhotoPiece, [string, number]>('photoPieces'),
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

/** The screen of a dough, or of something of it. */
export function atDough(batchId: string, more: Partial<At> = {}): At {
  return { batchId, measureId: null, piece: null, repeat: null, ...more }
}

/** Opens the screen of a dough. */
export async function openDough(batchId: string, more: Partial<At> = {}): Promise<void> {
  await remember('at', atDough(batchId, more))
}

/** Lets go of what is kept under a name. */
export async function forget(name: keyof Kept): Promise<void> {
  await tablet.kept.delete(name)
}

/**
 * Goes on to another screen once something is kept or answered. Whoever has gone elsewhere meanwhile stays there.
 * @param from what was open when it was asked for
 * @param to null where nothing is to be open
 */
export async function goOn<Name extends 'at' | 'checking' | 'noting' | 'photographing' | 'wrong'>(
  name: Name,
  from: Kept[Name] | null,
  to: Kept[Name] | null,
): Promise<void> {
  await inOne(async () => {
    const now = (await recall(name)) ?? null
    if (JSON.stringify(now) !== JSON.stringify(from)) return
    await (to === null ? forget(name) : remember(name, to))
  })
}
