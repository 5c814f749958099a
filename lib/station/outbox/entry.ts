import type { KindFacts } from '../kinds/kind-facts'

/** `waiting` and `attention` are on this tablet alone; `book` and `aside` were echoed by the book. */
export type EntryState = 'waiting' | 'attention' | 'book' | 'aside'

export type EntryKind = keyof KindFacts

/** What every entry carries, whatever it says: who kept it, and what became of it. */
type Envelope = {
  /** Of this envelope: a later build reads what an older one kept. */
  format: 1
  id: string
  /** Of the payload. */
  schema: 1
  /** SHA-256 of the content's one text; the book has to name it. */
  hash: string
  /** Order on this tablet, from 1. */
  counter: number
  stationId: string
  personId: string
  personName: string
  /** Of whoever kept it, when they did. A later one of the same person takes its place. */
  shiftToken: string
  state: EntryState
  /** Why the book refused it, as a code and in words. */
  refusal: string | null
  words: string | null
  /** And what is wrong with single fields, in words, which may tell what went into a dough; none of most. */
  faults?: string[]
  /** When the book's answer came, ms; null before. */
  settledAt: number | null
}

/** One entry of a kind as the tablet keeps it: its payload is what is sent. */
export type EntryOf<Kind extends EntryKind> = Envelope & { kind: Kind } & KindFacts[Kind]

export type OutboxEntry = { [Kind in EntryKind]: EntryOf<Kind> }[EntryKind]

/** Who gave a PIN or showed a badge here: the token lies on the tablet, and neither of the two anywhere. */
export type Holder = {
  personId: string
  name: string
  token: string | null
  /** When the PIN is asked again, ms. */
  endsAt: number
  /** When they typed their PIN here, ms; not at all where their badge led them in. */
  pinAt?: number
  /** What the book wants before it takes more from this person. */
  asks: 'nothing' | 'tap' | 'pin'
}
