import type { z } from 'zod'
import type { logReadingInput } from '../../kitchen/readings/log-reading.input'

/** `waiting` and `attention` are on this tablet alone; `book` and `aside` were echoed by the book. */
export type EntryState = 'waiting' | 'attention' | 'book' | 'aside'

/** One reading as the tablet keeps it: what is sent, who kept it, and what became of it. */
export type OutboxEntry = {
  /** Of this envelope: a later build reads what an older one kept. */
  format: 1
  id: string
  kind: 'reading'
  /** Of the payload. */
  schema: 1
  payload: z.input<typeof logReadingInput>
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
  /** When the book's answer came, ms; null before. */
  settledAt: number | null
  /** For showing it without the floor that it was read on. */
  shown: { code: string; measure: string; piece: number | null; level: string | null; repeat: number; unit: string }
}

/** Who gave a PIN here: the token lies on the tablet, and the PIN nowhere. */
export type Holder = {
  personId: string
  name: string
  token: string | null
  /** When the PIN is asked again, ms. */
  endsAt: number
  /** What the book wants before it takes more from this person. */
  asks: 'nothing' | 'tap' | 'pin'
}
