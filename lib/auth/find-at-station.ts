import 'server-only'
import type { Db, Tx } from '../db/client'
import type { Language, Role } from '../db/generated/enums'
import type { StationActor } from './actor'
import type { StationCredential } from './credential'
import { hashSecret } from './secret'
import { hashesOfHeld } from './station-secret'
import { latestMoment } from './session-life'

type Row = {
  bakeryId: string
  stationId: string
  stationName: string
  secretHash: string
  stationSeenAt: Date | null
  bakeryLanguage: Language | null
  stationIdleMin: number
  shiftId: string | null
  beganAt: Date | null
  lastSeenAt: Date | null
  endsAt: Date | null
  byBadge: boolean | null
  personId: string | null
  name: string | null
  role: Role | null
  language: Language | null
}

/**
 * Who is at an enrolled tablet: the person whose shift token it shows, while that lasts, belongs to this tablet and was
 * used of late, and otherwise the tablet with nobody on it. @returns nobody when the tablet is unknown or withdrawn
 */
export async function findAtStation(
  from: Db | Tx,
  { stationSecret, shiftToken }: StationCredential,
  now: Date,
): Promise<StationActor | null> {
  const hashes = hashesOfHeld(stationSecret)
  const [row] = await from.$queryRaw<Row[]>`
    SELECT station.bakery_id AS "bakeryId", station.id AS "stationId", station.name AS "stationName",
      pointer.hash AS "secretHash", station.last_seen_at AS "stationSeenAt", bakery.language::text AS "bakeryLanguage",
      bakery.station_idle_min AS "stationIdleMin",
      shift.id AS "shiftId", shift.began_at AS "beganAt", shift.last_seen_at AS "lastSeenAt", shift.ends_at AS "endsAt",
      shift.by_badge AS "byBadge",
      person.id AS "personId", person.name, person.role::text, person.language::text
    FROM sign_in_pointer AS pointer
    JOIN station ON station.bakery_id = pointer.bakery_id AND station.id = pointer.target_id
    JOIN bakery ON bakery.bakery_id = station.bakery_id
    LEFT JOIN sign_in_pointer AS held ON held.hash = ${hashSecret('station-shift', shiftToken ?? '')} AND held.kind = 'station_shift'
      AND held.bakery_id = station.bakery_id
    LEFT JOIN station_shift AS shift ON shift.bakery_id = held.bakery_id AND shift.id = held.target_id
      AND shift.station_id = station.id AND shift.ended_at IS NULL
    LEFT JOIN person ON person.bakery_id = shift.bakery_id AND person.id = shift.person_id AND person.ended_at IS NULL
    WHERE pointer.hash = ANY(${hashes}::text[]) AND pointer.kind = 'station'
      AND station.enrolled_at IS NOT NULL AND station.withdrawn_at IS NULL
    ORDER BY array_position(${hashes}::text[], pointer.hash) LIMIT 1`
  if (!row) return null
  const {
    bakeryId,
    stationId,
    stationName,
    secretHash,
    stationSeenAt,
    stationIdleMin,
    shiftId,
    beganAt,
    lastSeenAt,
    endsAt,
    personId,
    name,
    role,
  } = row
  const station = { kind: 'station', bakeryId, stationId, stationName, secretHash, stationSeenAt } as const
  const isHeld =
    endsAt !== null &&
    lastSeenAt !== null &&
    now < endsAt &&
    now.getTime() - lastSeenAt.getTime() < stationIdleMin * 60_000 &&
    // Begun while the clock was wrong, it would last for as long as the clock was ahead.
    lastSeenAt <= latestMoment()
  if (!isHeld || shiftId === null || beganAt === null || personId === null || name === null || role === null)
    return { ...station, personId: null, language: row.bakeryLanguage }
  return {
    ...station,
    personId,
    name,
    role,
    shiftId,
    shiftSeenAt: lastSeenAt,
    pinGivenAt: row.byBadge ? null : beganAt,
    language: row.language ?? row.bakeryLanguage,
  }
}
