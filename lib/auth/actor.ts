import 'server-only'
import type { Language, Role } from '../db/generated/enums'

/** Who acts, as the database knows them at this moment, with what each kind really has. */
export type Actor = DeskActor | StationActor | TasterActor | JobActor

type InBakery = {
  bakeryId: string
  /** What they chose, or else what the bakery did; null where neither has. */
  language: Language | null
}

/** Somebody of the bakery. */
type Person = { personId: string; name: string; role: Role }

/** A person who is signed in. */
export type DeskActor = InBakery &
  Person & {
    kind: 'desk'
    email: string
    sessionId: string
    /** When the session's last use was noted. */
    sessionSeenAt: Date
  }

type Station = InBakery & {
  kind: 'station'
  stationId: string
  stationName: string
  /** Hash of the secret that it showed. */
  secretHash: string
  /** When its last use was noted; null before the first. */
  stationSeenAt: Date | null
}

/** A station, with a person while one holds its shift, and nobody otherwise. */
export type StationActor = StationOnShift | StationAlone
export type StationOnShift = Station &
  Person & {
    shiftId: string
    /** When its last use was noted. */
    shiftSeenAt: Date
    /** When they gave their PIN there; null where their badge led them in. */
    pinGivenAt: Date | null
  }
export type StationAlone = Station & { personId: null }

/** A guest of one panel: nobody of the bakery. */
export type TasterActor = InBakery & { kind: 'taster'; panelId: string; code: string }

/** The works that the install does by itself or for whoever runs it. `owner-link`: `npm start -- --new-owner-link`. */
export type JobName = 'owner-link' | 'clear-run-out' | 'check-records' | 'anchor-records'

/** A work of the install, as itself: no person stands behind it. */
export type JobActor = InBakery & { kind: 'job'; job: JobName }
