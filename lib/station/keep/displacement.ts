import { draftKey, type Place } from './place-key'
import { inOne, remember, tablet, type At } from './tablet'

/** Under what a half-typed reading of a gauge without a loaf is kept. */
export function withoutKey(personId: string): string {
  return `${personId} gauge without`
}

/** As `draftKey`, of what the gauge shows with the loaf of a place in it. */
export function withKey(personId: string, place: Place): string {
  return `${draftKey(personId, place)} with`
}

/** The steps by which the volume of a place is read, or its pad. */
export function atDisplacement(place: Place, displace: At['displace'] | null): At {
  return { ...place, ...(displace ? { displace } : {}) }
}

/** Opens them. */
export async function openDisplacement(place: Place, displace: At['displace'] | null): Promise<void> {
  await remember('at', atDisplacement(place, displace))
}

/**
 * Keeps what a gauge shows without a loaf, for every loaf of the day on this tablet, and goes on with the loaf.
 * @throws where the tablet cannot keep it
 */
export async function keepEmptyGauge(value: string, by: { personId: string; personName: string }, place: Place) {
  await inOne(async () => {
    await remember('emptyGauge', { value, at: Date.now(), who: by.personName })
    await tablet.drafts.delete(withoutKey(by.personId))
    await openDisplacement(place, 'guided')
  })
}

/**
 * Puts a volume on the pad of its place, as if it had been typed there, and opens the pad.
 * @throws where the tablet cannot keep it
 */
export async function putOnPad(volume: string, personId: string, place: Place) {
  await inOne(async () => {
    await tablet.drafts.put({ place: draftKey(personId, place), text: volume })
    await tablet.drafts.delete(withKey(personId, place))
    await openDisplacement(place, 'put')
  })
}
