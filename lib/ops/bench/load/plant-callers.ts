import { must } from '../../../../seed/must'
import { openSession } from '../../../auth/sessions'
import { makeSessionToken, sessionCookie } from '../../../auth/sign-in-cookie'
import { shiftHeader, stationCookie } from '../../../auth/station-cookie'
import { beginStationShift } from '../../../auth/station-shifts'
import { inTransaction } from '../../../db/transaction'
import type { Caller } from '../../../kitchen/caller'
import { enrolStation } from '../../../kitchen/stations/enrol-station'
import { makeStation } from '../../../kitchen/stations/make-station'

/** What says in a request who asks. */
export type Headers = Readonly<Record<string, string>>
export type Whose = { bakeryId: string; personId: string }

/**
 * Draws up stations and enrols them, each with a person on it.
 * @param owner a caller who may manage stations
 * @returns the headers of each
 */
export async function plantStations(
  owner: Caller,
  { bakeryId, personId }: Whose,
  count: number,
  called = 'Load',
): Promise<Headers[]> {
  const stations: Headers[] = []
  for (let i = 1; i <= count; i++) {
    const { stationId, code } = must(await makeStation.call(owner, { name: `${called} ${i}` }))
    const from = { kind: 'desk', address: 'load', device: 'load', sessionSecret: null } as const
    const { secret } = must(await enrolStation.call(from, { code }))
    // A PIN takes its time to be judged, on purpose; it is not what is measured.
    const { token } = await inTransaction((tx) =>
      beginStationShift(tx, { bakeryId, stationId, personId, byBadge: false }, new Date()),
    )
    stations.push({ Cookie: `${stationCookie}=${secret}`, [shiftHeader]: token })
  }
  return stations
}

/** Signs a person in on so many devices. @returns the headers of each */
export async function plantReaders(whose: Whose, count: number): Promise<Headers[]> {
  const readers: Headers[] = []
  for (let i = 0; i < count; i++) {
    const secret = await inTransaction((tx) => openSession(tx, whose, 'load', new Date()))
    readers.push({ Cookie: `${sessionCookie}=${await makeSessionToken(secret)}` })
  }
  return readers
}
