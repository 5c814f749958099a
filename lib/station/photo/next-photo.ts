import type { Holder } from '../outbox/entry'
import type { TabletPhoto } from './tablet-photo'

type Waiting = Pick<TabletPhoto, 'state' | 'personId' | 'counter' | 'tries' | 'shiftToken'>

/**
 * Which photo goes next, and under which token: the oldest of those that were tried least, so that one which the book
 * never answers holds up no other; none of whoever has to log on first.
 */
export function nextPhoto<Photo extends Waiting>(
  photos: readonly Photo[],
  holders: readonly Pick<Holder, 'personId' | 'token' | 'asks'>[],
): { photo: Photo; token: string } | null {
  const asked = new Set(holders.filter(({ asks }) => asks !== 'nothing').map(({ personId }) => personId))
  const [photo] = photos
    .filter(({ state, personId }) => state === 'waiting' && !asked.has(personId))
    .sort((a, b) => a.tries - b.tries || a.counter - b.counter)
  return photo
    ? { photo, token: holders.find(({ personId }) => personId === photo.personId)?.token ?? photo.shiftToken }
    : null
}
