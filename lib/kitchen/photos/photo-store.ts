import 'server-only'
import { createHash } from 'node:crypto'
import type { Db, Tx } from '../../db/client'
import { countOfPieces, pieceOfPhoto } from './photo-limits.input'

type Which = { bakeryId: string; photoId: string }

/** Where pictures lie. Another store could take this one's place: nothing else knows of it. */
export type PhotoStore = {
  /** Keeps a picture with the transaction that keeps what is said of it. */
  keep(tx: Tx, which: Which, bytes: Uint8Array<ArrayBuffer>): Promise<void>
  /**
   * Gives a picture back.
   * @throws Error where what lies there has not this hash
   */
  read(db: Db, which: Which, hash: string): Promise<Uint8Array<ArrayBuffer>>
}

/** Pictures in PostgreSQL, in pieces. */
export const photoStore: PhotoStore = {
  async keep(tx, which, bytes) {
    for (let number = 0; number < countOfPieces(bytes.length); number++)
      await tx.photoPiece.create({
        data: { ...which, number, bytes: pieceOfPhoto(bytes, number) },
        select: { number: true },
      })
  },
  async read(db, which, hash) {
    const rows = await db.photoPiece.findMany({ where: which, select: { bytes: true }, orderBy: { number: 'asc' } })
    const bytes = new Uint8Array(Buffer.concat(rows.map((row) => row.bytes)))
    if (hashOfBytes(bytes) !== hash) throw new Error(`photo ${which.photoId} is not what was kept`)
    return bytes
  },
}

/** SHA-256 of bytes, in hexadecimal. */
export function hashOfBytes(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex')
}
