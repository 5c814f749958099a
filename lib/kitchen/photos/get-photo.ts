import 'server-only'
import { z } from 'zod'
import { query } from '../query'
import { Refusal } from '../refusal'
import { photoStore } from './photo-store'

/** One photo, whole or small as it stands in lists. Refuses: not-found, for another bakery's too. */
export const getPhoto = query({
  name: 'photos.get-photo',
  input: z.strictObject({ photoId: z.uuid(), isSmall: z.boolean() }),
  right: 'read-shift',
  async run({ db, actor: { bakeryId }, input: { photoId, isSmall } }) {
    const id = photoId.toLowerCase()
    const photo = await db.photo.findUnique({
      where: { bakeryId_id: { bakeryId, id } },
      select: { mediaType: true, hash: true, small: isSmall },
    })
    if (!photo) throw new Refusal('not-found')
    const { mediaType, hash, small } = photo
    return { id, mediaType, bytes: isSmall ? small : await photoStore.read(db, { bakeryId, photoId: id }, hash) }
  },
})
