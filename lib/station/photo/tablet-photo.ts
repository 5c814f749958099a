import type { SaidPhoto } from './send-in-pieces'

/** A photo as the tablet keeps it; its pieces lie apart, and go once it is in the book. */
export type TabletPhoto = {
  /** Of this row: a later build reads what an older one kept. */
  format: 1
  id: string
  /** What is said of it to the book. */
  said: SaidPhoto
  /** Of the dough or the lot, by which it is shown. */
  code: string
  /** Order on this tablet, from 1, in one row with the entries. */
  counter: number
  stationId: string
  personId: string
  personName: string
  shiftToken: string
  /** `waiting` and `attention` are on this tablet alone. */
  state: 'waiting' | 'attention' | 'book'
  /** How often it was tried and the book did not answer. */
  tries: number
  /** Why the book refused it. */
  words: string | null
  /** When the book's answer came, ms. */
  settledAt: number | null
  /** To show: a small JPEG. */
  small: Uint8Array<ArrayBuffer>
}

export type TabletPhotoPiece = { photoId: string; number: number; bytes: Uint8Array<ArrayBuffer> }
