import { z } from 'zod'
import { instant } from '../text.input'

const sha256 = z.string().regex(/^[0-9a-f]{64}$/)

/** A photo as its sender says it beforehand; said again, it is the same photo, and answered with what is lacking of it. */
export const sendPhotoInput = z.strictObject({
  /** Made by the sender when the photo is taken; the same id is never used for another one. */
  id: z.uuidv7(),
  batchId: z.uuid(),
  /** Null where it is of the whole dough. */
  piece: z.int().min(1).nullable(),
  /** By the sender's own clock. */
  takenAt: instant,
  /** Of the file as it is sent: how long it is, and its SHA-256 in hexadecimal. */
  bytes: z.int().min(1),
  hash: sha256,
})
export type SaidPhoto = z.output<typeof sendPhotoInput>

/** One piece of it. */
export const sendPhotoPieceInput = z.strictObject({
  photoId: z.uuid(),
  number: z.int().min(0),
  /** Of this piece, so that one that was cut on its way is none. */
  hash: sha256,
  bytes: z.instanceof(Uint8Array),
})
