import { v7 as uuid } from 'uuid'
import { pieceOfPhoto } from '@/lib/kitchen/photos/photo-limits.input'
import { hashOfBytes } from '@/lib/station/keep/hash-of'
import { readyPhoto } from '@/lib/station/photo/ready-photo'
import { sendInPieces, type PhotoSent, type SaidPhoto } from '@/lib/station/photo/send-in-pieces'

/** A file that somebody chose, with what is said of it once it was sent: sent again, it is the same photo. */
export type Chosen = {
  file: File
  piece: number | null
  made: { photo: SaidPhoto; bytes: Uint8Array<ArrayBuffer> } | null
}

const earliestMs = Date.UTC(2000, 0, 2)

/** Sends a chosen photo, or what is lacking of it. */
export async function sendChosenPhoto(
  batchId: string,
  chosen: Chosen,
  onPiece: (done: number, count: number) => void,
): Promise<PhotoSent> {
  const { photo, bytes } = (chosen.made ??= await make(batchId, chosen))
  const sent = await sendInPieces({
    photo,
    pieceOf: (number) => Promise.resolve(pieceOfPhoto(bytes, number)),
    token: null,
    onPiece,
  })
  // The book has let go of it: another try is another photo.
  if (sent.outcome === 'refused') chosen.made = null
  return sent
}

async function make(batchId: string, { file, piece }: Chosen): Promise<NonNullable<Chosen['made']>> {
  // What this browser cannot read may be a photo all the same, and the book says what is wrong with it.
  const bytes = await readyPhoto(file).then(
    (ready) => ready.bytes,
    async () => new Uint8Array(await file.arrayBuffer()),
  )
  // Some folders know no time, and some clocks are ahead.
  const now = Date.now()
  const isKnown = file.lastModified > earliestMs && file.lastModified < now
  const takenAt = new Date(isKnown ? file.lastModified : now).toISOString()
  return { photo: { id: uuid(), batchId, piece, takenAt, bytes: bytes.length, hash: await hashOfBytes(bytes) }, bytes }
}
