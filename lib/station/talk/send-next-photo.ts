import { station as words } from '../../words/en/station'
import { inOne, recall, tablet } from '../keep/tablet'
import { nextPhoto } from '../photo/next-photo'
import { sendInPieces } from '../photo/send-in-pieces'
import { knowWho } from './know-who'

/**
 * Sends one photo, or what is lacking of it. A photo that is in the book keeps its small picture here, and no pieces.
 * @param isToStop asked before each piece: something else is to go first
 */
export async function sendNextPhoto(isToStop: () => boolean): Promise<'nothing' | 'sent' | 'failed'> {
  if (await recall('withdrawn')) return 'nothing'
  const [photos, holders] = await Promise.all([
    tablet.photos.where('state').equals('waiting').toArray(),
    tablet.holders.toArray(),
  ])
  const next = nextPhoto(photos, holders)
  if (!next) return 'nothing'
  const { photo, token } = next
  const sent = await sendInPieces({
    photo: photo.said,
    token,
    isToStop,
    pieceOf: async (number) => (await tablet.photoPieces.get([photo.id, number]))?.bytes,
  })
  switch (sent.outcome) {
    case 'kept':
      await inOne(async () => {
        await tablet.photos.update(photo.id, { state: 'book', words: null, settledAt: Date.now() })
        await tablet.photoPieces.where('photoId').equals(photo.id).delete()
      })
      return 'sent'
    case 'refused':
      await tablet.photos.update(photo.id, { state: 'attention', words: sent.words ?? words.list.unreadable })
      return 'sent'
    case 'who':
      return (await knowWho(photo.personId, token)) ? 'failed' : 'sent'
    case 'stopped':
      return 'sent'
    case 'again':
      await tablet.photos.update(photo.id, { tries: photo.tries + 1 })
      return 'failed'
    default:
      return sent satisfies never
  }
}
