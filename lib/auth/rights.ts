import 'server-only'
import type { Role } from '../db/generated/enums'
import type { Actor, DeskActor, JobActor, JobName, StationAlone, StationOnShift, TasterActor } from './actor'

/**
 * `yes`; `no`; `own-same-shift`: only what the person entered in this shift; `in-part`: the command narrows it
 * further, and its docstring says how.
 */
export type Level = 'yes' | 'no' | 'own-same-shift' | 'in-part'

/** What each kind of caller may of one right. */
type Row = {
  /** Persons who are signed in, by role. */
  desk: Record<Role, Level>
  /** Persons at a shared tablet, by role. */
  station: Record<Role, Level>
  /** The tablet while nobody holds its shift. */
  stationAlone: Level
  taster: Level
  /** The jobs that may, in whole. */
  jobs: readonly JobName[]
}

const all = { owner: 'yes', head_baker: 'yes', shift_baker: 'yes' } as const
const heads = { owner: 'yes', head_baker: 'yes', shift_baker: 'no' } as const
const correctors = { owner: 'yes', head_baker: 'yes', shift_baker: 'own-same-shift' } as const
const nobody = { owner: 'no', head_baker: 'no', shift_baker: 'no' } as const
const atDeskOnly = { station: nobody, stationAlone: 'no', taster: 'no', jobs: [] } as const

/** Who may do what: the one table that every command, query and page asks. */
export const rights = {
  'propose-trial': { ...atDeskOnly, desk: all },
  'approve-plan': { ...atDeskOnly, desk: heads },
  'log-reading': { ...atDeskOnly, desk: all, station: all },
  'correct-reading': { ...atDeskOnly, desk: correctors, station: correctors },
  // Many readings at once, of doughs that somebody else may have baked: for those who may correct any reading, at the desk.
  'import-readings': { ...atDeskOnly, desk: heads },
  // What came in too late for its place, of whoever sent it.
  'settle-entries': { ...atDeskOnly, desk: heads },
  // What should stand in place of something that was closed: a proposal, which changes nothing by itself.
  'propose-amendment': { ...atDeskOnly, desk: all },
  // Shift bakers as a witness only, where nobody else could be the second person.
  'decide-amendment': { ...atDeskOnly, desk: { owner: 'yes', head_baker: 'yes', shift_baker: 'in-part' } },
  'see-costs': { ...atDeskOnly, desk: heads },
  'edit-stores': { ...atDeskOnly, desk: heads },
  'draft-formula': { ...atDeskOnly, desk: heads },
  'sign-off-formula': { ...atDeskOnly, desk: heads },
  'manage-people': { ...atDeskOnly, desk: { owner: 'yes', head_baker: 'in-part', shift_baker: 'no' } },
  // Tablets: the owner, and the head baker in the owner's absence, whom the desk then tells.
  'manage-stations': { ...atDeskOnly, desk: heads },
  // A tablet's own: who may log on to it, and logging on and off.
  'hold-station': { ...atDeskOnly, desk: nobody, station: all, stationAlone: 'yes' },
  // To be told that the book has changed, and nothing of it.
  'follow-book': { ...atDeskOnly, desk: all, station: all, stationAlone: 'yes' },
  'change-settings': { ...atDeskOnly, desk: { owner: 'yes', head_baker: 'no', shift_baker: 'no' } },
  taste: { ...atDeskOnly, desk: all, station: all, taster: 'yes' },
  'read-work': { ...atDeskOnly, desk: all },
  // What the shift needs. A tablet on the bench gets neither costs nor which dough is which.
  'read-shift': { ...atDeskOnly, desk: all, station: all },
  'read-record': { ...atDeskOnly, desk: heads, jobs: ['check-records'] },
  'own-account': { ...atDeskOnly, desk: all },
  'make-owner-link': { ...atDeskOnly, desk: nobody, jobs: ['owner-link'] },
} as const satisfies Record<string, Row>

export type Right = keyof typeof rights

/** Who is asked about: an actor, or a role there. */
export type Party =
  | { kind: 'desk'; role: Role }
  | { kind: 'station'; role: Role }
  | { kind: 'station'; personId: null }
  | { kind: 'taster' }
  | { kind: 'job'; job: JobName }

/** What a party may do of a right. A right, kind, role or job that is not in the table may nothing. */
export function levelOf(party: Party, right: Right): Level {
  const row: Row | undefined = Object.hasOwn(rights, right) ? rights[right] : undefined
  if (!row) return 'no'
  switch (party.kind) {
    case 'desk':
      return levelOfRole(row.desk, party.role)
    case 'station':
      return 'role' in party ? levelOfRole(row.station, party.role) : row.stationAlone
    case 'taster':
      return row.taster
    case 'job':
      return row.jobs.includes(party.job) ? 'yes' : 'no'
    default:
      party satisfies never
      return 'no'
  }
}

function levelOfRole(levels: Record<Role, Level>, role: Role): Level {
  return Object.hasOwn(levels, role) ? levels[role] : 'no'
}

/** Whoever gets past the door of a right by the table, so that its work is never given anybody else. */
export type ActorOf<R extends Right> = R extends Right ? ActorOfRow<(typeof rights)[R]> : never

type ActorOfRow<R extends Row> =
  | (SomeMay<R['desk']> extends true ? DeskActor : never)
  | (SomeMay<R['station']> extends true ? StationOnShift : never)
  | (R['stationAlone'] extends 'no' ? never : StationAlone)
  | (R['taster'] extends 'no' ? never : TasterActor)
  | (R['jobs'] extends readonly [] ? never : JobActor)

type SomeMay<Levels extends Record<Role, Level>> = Levels[Role] extends 'no' ? false : true

/** Whether this actor gets past the door; what is less than `yes` is narrowed behind it. */
export function mayTry<R extends Right>(actor: Actor, right: R): actor is Actor & ActorOf<R> {
  return levelOf(actor, right) !== 'no'
}
