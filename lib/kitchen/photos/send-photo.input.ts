import { z } from 'zod'
import { lotCode } from '../stores/lot-code.input'
import { instant } from '../text.input'

const sha256 = z.string().regex(/^[0-9a-f]{64}$/)

/** A photo as its sender says it beforehand; said again, it is the same photo, and answered with what is lacking of it. */
export const sendPhotoInput = z
  .strictObject({
    /** Made by the sender when the photo is taken; the same id is never used for another one. */
    id: z.uuidv7(),
    /** Null where it is of a label. */
    batchId: z.uuid().nullable(),
    /** Null where it is of the whole dough. */
    piece: z.int().min(1).nullable(),
    /** Of a lot's label: of which ingredient, and the code that was typed. It is of no dough, because it would tell which. */
    label: z.strictObject({ ingredientId: z.uuid(), code: lotCode }).nullish(),
    /** By the sender's own clock. */
    takenAt: instant,
    /** Of the file as it is sent: how long it is, and its SHA-256 in hexadecimal. */
    bytes: z.int().min(1),
    hash: sha256,
  })
  .refine(({ batchId, piece, label }) => (label ? batchId === null && piece === null : batchId !== null), {
    path: ['batchId'],
    params: { code: 'dough-or-label' },
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
