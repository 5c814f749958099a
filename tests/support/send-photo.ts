import { createHash } from 'node:crypto'
import { v7 as uuid } from 'uuid'
import type { Caller } from '../../lib/kitchen/caller'
import { sendPhoto, type SentPhoto } from '../../lib/kitchen/photos/send-photo'
import { sendPhotoPiece } from '../../lib/kitchen/photos/send-photo-piece'
import { photoPieceBytes } from '../../lib/kitchen/photos/photo-limits.input'
import { testNow, valueOf } from './bakery'

export const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex')

/** What its sender says of a photo. */
export function saidOf(sent: Uint8Array, batchId: string, more: object = {}) {
  return {
    id: uuid(),
    batchId,
    piece: null as number | null,
    takenAt: testNow.toISOString(),
    bytes: sent.length,
    hash: sha256(sent),
    ...more,
  }
}

/** One piece of what is sent, with its number. */
export function pieceToSend(sent: Uint8Array, photoId: string, number: number) {
  const bytes = new Uint8Array(sent.subarray(number * photoPieceBytes, (number + 1) * photoPieceBytes))
  return { photoId, number, bytes, hash: sha256(bytes) }
}

/** Sends a photo as a well-meaning sender does, and gives the last answer. */
export async function sendWhole(caller: Caller, sent: Uint8Array, said: ReturnType<typeof saidOf>): Promise<SentPhoto> {
  const first = valueOf(await sendPhoto.call(caller, said))
  if (first.outcome !== 'lacks') return first
  for (const number of first.pieces) valueOf(await sendPhotoPiece.call(caller, pieceToSend(sent, said.id, number)))
  return valueOf(await sendPhoto.call(caller, said))
}
