import { v7 as uuid } from 'uuid'
import { countOfPieces, pieceOfPhoto } from '../../kitchen/photos/photo-limits.input'
import { hashOfBytes } from '../keep/hash-of'
import type { KeptBy } from '../keep/keep-entry'
import { inOne, recall, remember, tablet, type Kept } from '../keep/tablet'
import type { ReadyPhoto } from './ready-photo'

/**
 * Keeps a photo on the tablet, whole or not at all: when the promise is kept it is on the disk, in the pieces in which it goes.
 * @throws where the tablet cannot keep it: there is no room
 */
export async function keepPhoto(q: { of: Kept['photographing']; ready: ReadyPhoto; by: KeptBy }): Promise<void> {
  const { of, ready, by } = q
  const { bytes } = ready
  const id = uuid()
  const { label } = of
  const said = {
    id,
    ...(label
      ? { batchId: null, piece: null, label: { ingredientId: label.ingredientId, code: label.code } }
      : { batchId: of.batchId, piece: of.piece }),
    takenAt: new Date().toISOString(),
    bytes: bytes.length,
    hash: await hashOfBytes(bytes),
  }
  const small = new Uint8Array(await ready.small.arrayBuffer())
  await inOne(async () => {
    const counter = ((await recall('counter')) ?? 0) + 1
    await remember('counter', counter)
    await tablet.photos.add({
      format: 1,
      id,
      said,
      code: label?.code ?? of.code,
      counter,
      ...by,
      state: 'waiting',
      tries: 0,
      words: null,
      settledAt: null,
      small,
    })
    for (let number = 0; number < countOfPieces(bytes.length); number++)
      await tablet.photoPieces.add({
        photoId: id,
        number,
        bytes: pieceOfPhoto(bytes, number),
      })
  })
}
