import 'server-only'
import type { JobName } from './actor'

/** What is shown at the door, by kind of caller: not yet somebody. Nothing else says who that is. */
export type Credential = DeskCredential | StationCredential | TasterCredential | JobCredential

/** The secret of a session, from a cookie; null for somebody who is not signed in. */
export type DeskCredential = { kind: 'desk'; sessionSecret: string | null }

/** The station's own secret, with former ones behind it (`station-secret.ts`), and the token of the shift that a person holds on it, while one does. */
export type StationCredential = { kind: 'station'; stationSecret: string; shiftToken: string | null }

/** The secret of the link to a panel, and the taster's code there. */
export type TasterCredential = { kind: 'taster'; panelSecret: string; code: string }

/** A work of the install itself in one bakery. Only its own process says that; no request carries it. */
export type JobCredential = { kind: 'job'; job: JobName; bakeryId: string }
