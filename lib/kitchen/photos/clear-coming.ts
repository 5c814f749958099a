import 'server-only'
import type { Tx } from '../../db/client'

/** Lets go of a photo that was on its way: it is in the book now, or will never be. */
export async function clearComing(tx: Tx, bakeryId: string, photoId: string): Promise<void> {
  await tx.comingPhotoPiece.deleteMany({ where: { bakeryId, photoId } })
  await tx.comingPhoto.deleteMany({ where: { bakeryId, id: photoId } })
}
