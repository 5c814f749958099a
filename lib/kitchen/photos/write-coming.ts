import 'server-only'
import pLimit from 'p-limit'
import { db } from '../../db/client'
import { Refusal } from '../refusal'
import { countOfPieces } from './photo-limits.input'
import { hashOfBytes } from './photo-store'
import { rewritePicture, type Picture, type PictureFault } from './rewrite-picture'

/** Decoded at a time, and waiting for that, in one process. */
const [mostAtOnce, mostWaiting] = [2, 20]
const inTurn = pLimit(mostAtOnce)

/**
 * Puts the pieces of a photo together and writes it anew, in its turn. Null while pieces are lacking.
 * @throws Refusal photos-busy
 */
export async function writeComing(
  bakeryId: string,
  said: { id: string; bytes: number; hash: string },
): Promise<Picture | PictureFault | null> {
  const where = { bakeryId, photoId: said.id }
  const coming = { bakeryId, id: said.id, sentBytes: said.bytes, sentHash: said.hash }
  const isWhole = async () =>
    (await db().comingPhoto.count({ where: coming })) === 1 &&
    (await db().comingPhotoPiece.count({ where })) === countOfPieces(said.bytes)
  if (!(await isWhole())) return null
  if (inTurn.pendingCount >= mostWaiting) throw new Refusal('photos-busy')
  // Whoever waits holds nothing yet.
  return inTurn(async () => {
    const pieces = await db().comingPhotoPiece.findMany({ where, select: { bytes: true }, orderBy: { number: 'asc' } })
    const sent = Buffer.concat(pieces.map(({ bytes }) => bytes))
    if (sent.length !== said.bytes || hashOfBytes(sent) !== said.hash) return 'photo-cut-off'
    return rewritePicture(sent)
  })
}
