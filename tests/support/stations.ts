import type { StationCredential } from '../../lib/auth/credential'
import { choosePin } from '../../lib/kitchen/people/choose-pin'
import { makeOwnBadge } from '../../lib/kitchen/people/make-own-badge'
import { enrolStation } from '../../lib/kitchen/stations/enrol-station'
import { logOn } from '../../lib/kitchen/stations/log-on'
import { makeStation } from '../../lib/kitchen/stations/make-station'
import { callerOf, testNow, valueOf, type TestBakery, type TestPerson } from './bakery'

/** A PIN that nobody would try first. */
export const testPin = '402759'

export type TestStation = { stationId: string; name: string; secret: string }

/** A tablet at a time, with a person's token or nobody. */
export function atStation(station: Pick<TestStation, 'secret'>, shiftToken: string | null, now: Date = testNow) {
  const credential: StationCredential = { kind: 'station', stationSecret: station.secret, shiftToken }
  return { ...credential, address: 'test', device: 'tablet', now: () => now }
}

/** Draws a tablet up at the desk of an owner, and enrols it, as people do. */
export async function enrolledStation(bakery: TestBakery, name = 'Bench', now: Date = testNow): Promise<TestStation> {
  const { owner } = bakery
  const { stationId, code } = valueOf(await makeStation.call(callerOf(owner.sessionSecret, now), { name }))
  const { secret } = valueOf(await enrolStation.call(callerOf(null, now), { code }))
  return { stationId, name, secret }
}

/** Gives a person a PIN at the desk. */
export async function givePin(person: TestPerson, pin: string = testPin, now: Date = testNow): Promise<void> {
  valueOf(await choosePin.call(callerOf(person.sessionSecret, now, person.password), { pin }))
}

/** The token of a person's shift at a tablet. */
export async function tokenAt(
  station: TestStation,
  person: TestPerson,
  pin: string = testPin,
  now: Date = testNow,
): Promise<string> {
  const given = valueOf(await logOn.call(atStation(station, null, now), { personId: person.personId, pin }))
  return given.shiftToken
}

/** What stands on a badge that a person made for themself. */
export async function badgeOf(person: TestPerson, now: Date = testNow): Promise<string> {
  return valueOf(await makeOwnBadge.call(callerOf(person.sessionSecret, now, person.password), {})).code
}
