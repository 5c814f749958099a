import 'server-only'
import type { Role } from '../db/generated/enums'

/** A guest who tastes by link has no role in the bakery, so it stands beside the roles. */
export type Party = Role | 'taster'

/**
 * `yes`; `no`; `own-same-shift`: only what the person entered in this shift; `in-part`: the command narrows it
 * further, and its docstring says how.
 */
export type Level = 'yes' | 'no' | 'own-same-shift' | 'in-part'

type Row = Record<Party, Level> & {
  /** Whether it may be done from a shared tablet, whoever is signed in there. */
  atStation: boolean
}

/** Who may do what: the one table that every command, query and page asks. */
export const rights = {
  'propose-trial': { owner: 'yes', head_baker: 'yes', shift_baker: 'yes', taster: 'no', atStation: false },
  'approve-plan': { owner: 'yes', head_baker: 'yes', shift_baker: 'no', taster: 'no', atStation: false },
  'log-reading': { owner: 'yes', head_baker: 'yes', shift_baker: 'yes', taster: 'no', atStation: true },
  'correct-reading': { owner: 'yes', head_baker: 'yes', shift_baker: 'own-same-shift', taster: 'no', atStation: true },
  // Many readings at once, of doughs that somebody else may have baked: for those who may correct any reading, at the desk.
  'import-readings': { owner: 'yes', head_baker: 'yes', shift_baker: 'no', taster: 'no', atStation: false },
  'see-costs': { owner: 'yes', head_baker: 'yes', shift_baker: 'no', taster: 'no', atStation: false },
  'edit-stores': { owner: 'yes', head_baker: 'yes', shift_baker: 'no', taster: 'no', atStation: false },
  'draft-formula': { owner: 'yes', head_baker: 'yes', shift_baker: 'no', taster: 'no', atStation: false },
  'sign-off-formula': { owner: 'yes', head_baker: 'yes', shift_baker: 'no', taster: 'no', atStation: false },
  'manage-people': { owner: 'yes', head_baker: 'in-part', shift_baker: 'no', taster: 'no', atStation: false },
  'change-settings': { owner: 'yes', head_baker: 'no', shift_baker: 'no', taster: 'no', atStation: false },
  taste: { owner: 'yes', head_baker: 'yes', shift_baker: 'yes', taster: 'yes', atStation: true },
  'read-work': { owner: 'yes', head_baker: 'yes', shift_baker: 'yes', taster: 'no', atStation: true },
  'read-record': { owner: 'yes', head_baker: 'yes', shift_baker: 'no', taster: 'no', atStation: false },
  'own-account': { owner: 'yes', head_baker: 'yes', shift_baker: 'yes', taster: 'no', atStation: false },
} as const satisfies Record<string, Row>

export type Right = keyof typeof rights

/** What a party may do of a right. An unknown right or party may nothing. */
export function levelOf(party: Party, right: Right): Level {
  const row: Row | undefined = rights[right]
  return row?.[party] ?? 'no'
}

/** Whether this party, at the desk or at a station, gets past the door; `in-part` is narrowed behind it. */
export function mayTry(party: Party, right: Right, where: 'desk' | 'station'): boolean {
  const row: Row | undefined = rights[right]
  if (!row) return false
  return levelOf(party, right) !== 'no' && (where === 'desk' || row.atStation)
}
