import 'server-only'
import { z } from 'zod'
import { query } from '../query'

/**
 * The photos of a dough, in the order in which they came; a dough has at most a hundred. They are the same for everybody.
 * Of a dough that is not there, there are none.
 */
export const listPhotos = query({
  name: 'photos.list-photos',
  input: z.strictObject({ batchId: z.uuid() }),
  right: 'read-shift',
  async run({ db, actor: { bakeryId }, input: { batchId } }) {
    const rows = await db.photo.findMany({
      where: { bakeryId, batchId },
      select: {
        id: true,
        piece: true,
        takenAt: true,
        receivedAt: true,
        width: true,
        height: true,
        person: { select: { name: true } },
      },
      orderBy: [{ receivedAt: 'asc' }, { id: 'asc' }],
    })
    return { photos: rows.map(({ person, ...photo }) => ({ ...photo, who: person.name })) }
  },
})
