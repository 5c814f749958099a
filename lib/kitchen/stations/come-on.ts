import 'server-only'
import type { StationActor } from '../../auth/actor'
import { beginStationShift } from '../../auth/station-shifts'
import { renewStationSecret } from '../../auth/station-secret'
import type { Tx } from '../../db/client'
import type { Role } from '../../db/generated/enums'

type Coming = { person: { id: string; name: string; role: Role }; byBadge: boolean }

/**
 * Puts a person on a tablet, however they said who they are. Whoever was on it stays one tap away.
 * @returns the token of their shift there, now and then another secret of the tablet's own, and what the record says
 */
export async function comeOn(tx: Tx, actor: StationActor, { person, byBadge }: Coming, now: Date) {
  const { bakeryId, stationId } = actor
  const { token, endsAt } = await beginStationShift(tx, { bakeryId, stationId, personId: person.id, byBadge }, now)
  const secret = await renewStationSecret(tx, actor, now)
  return {
    value: { secret, shiftToken: token, endsAt: endsAt.toISOString(), person },
    audit: { target: person.id, ...(secret === null ? {} : { after: { newSecret: true } }) },
  }
}
