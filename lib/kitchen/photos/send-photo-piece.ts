import 'server-only'
import { command } from '../command'
import { Refusal } from '../refusal'
import { lengthOfPiece } from './photo-limits.input'
import { hashOfBytes } from './photo-store'
import { lockPhoto } from './said-photo'
import { sendPhotoPieceInput } from './send-photo.input'

/**
 * Takes one piece of a photo that was said by the same person, and answers with the hash of what came. The same piece
 * again is the same. Refuses: not-found, photo-cut-off (it is not what its sender sent), photo-clash.
 */
export const sendPhotoPiece = command({
  name: 'photos.send-photo-piece',
  input: sendPhotoPieceInput,
  right: 'log-reading',
  async run({ tx, actor, input: { photoId, number, hash, bytes } }) {
    const { bakeryId, personId } = actor
    const id = photoId.toLowerCase()
    await lockPhoto(tx, id)
    const coming = await tx.comingPhoto.findUnique({
      where: { bakeryId_id: { bakeryId, id }, personId },
      select: { sentBytes: true },
    })
    if (!coming) throw new Refusal('not-found')
    const length = lengthOfPiece(number, coming.sentBytes)
    if (length === 0) throw new Refusal('not-found')
    if (bytes.length !== length || hashOfBytes(bytes) !== hash) throw new Refusal('photo-cut-off')
    const key = { bakeryId, photoId: id, number }
    const there = await tx.comingPhotoPiece.findUnique({
      where: { bakeryId_photoId_number: key },
      select: { bytes: true },
    })
    if (there && hashOfBytes(there.bytes) !== hash) throw new Refusal('photo-clash')
    if (!there)
      await tx.comingPhotoPiece.create({ data: { ...key, bytes: new Uint8Array(bytes) }, select: { number: true } })
    return { value: { number, hash }, audit: null }
  },
})
