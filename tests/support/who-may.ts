import type { Actor } from '../../lib/auth/actor'
import type { Right } from '../../lib/auth/rights'

/** Everybody who may call, one of each sort: persons at the desk and at a shared tablet, the tablet alone, a guest, a job. */
export const parties = [
  'desk owner',
  'desk head_baker',
  'desk shift_baker',
  'station owner',
  'station head_baker',
  'station shift_baker',
  'station alone',
  'taster',
  'job owner-link',
  'job check-records',
] as const
export type PartyName = (typeof parties)[number]

/**
 * The table of who may do what, written out again by hand: `y` yes, `-` no, `s` own readings of the same shift, `p` in
 * part. Columns as in `parties`: owner, head baker and shift baker at the desk, the same at a station, the station with
 * nobody on it, a taster, the job that makes a link for an owner, the job that checks records.
 */
export const whoMay: Record<Right, string> = {
  'propose-trial': 'yyy --- - - - -',
  'approve-plan': 'yy- --- - - - -',
  'log-reading': 'yyy yyy - - - -',
  'correct-reading': 'yys yys - - - -',
  'import-readings': 'yy- --- - - - -',
  'settle-entries': 'yy- --- - - - -',
  'propose-amendment': 'yyy --- - - - -',
  'decide-amendment': 'yyp --- - - - -',
  'see-costs': 'yy- --- - - - -',
  'edit-stores': 'yy- --- - - - -',
  'draft-formula': 'yy- --- - - - -',
  'sign-off-formula': 'yy- --- - - - -',
  'manage-people': 'yp- --- - - - -',
  'manage-stations': 'yy- --- - - - -',
  'hold-station': '--- yyy y - - -',
  'follow-book': 'yyy yyy y - - -',
  'change-settings': 'y-- --- - - - -',
  taste: 'yyy yyy - y - -',
  'read-work': 'yyy --- - - - -',
  'read-shift': 'yyy yyy - - - -',
  'read-record': 'yy- --- - - - y',
  'own-account': 'yyy --- - - - -',
  'make-owner-link': '--- --- - - y -',
}

const levels: Record<string, string> = { y: 'yes', '-': 'no', s: 'own-same-shift', p: 'in-part' }

/** What the table says of somebody: `yes`, `no`, `own-same-shift` or `in-part`. */
export function levelByHand(party: PartyName, right: Right): string {
  return levels[whoMay[right].replaceAll(' ', '')[parties.indexOf(party)] ?? ''] ?? 'missing'
}

/** An actor of the sort, made up. */
export function actorOf(party: PartyName, bakeryId = '01a22670-a9c1-7116-b164-c0fb2379cbc7'): Actor {
  const [kind, which] = party.split(' ')
  const person = { personId: '01a22670-ac00-7439-aa86-2399f59754fb', name: 'Teo Lindqvist', role: which as 'owner' }
  const station = {
    bakeryId,
    language: null,
    kind: 'station',
    stationId: '01a22670-d001-7a10-8c3f-4f0e9d2b6a55',
    stationName: 'Bench',
    secretHash: '0'.repeat(64),
    stationSeenAt: null,
  } as const
  switch (kind) {
    case 'desk':
      return {
        kind,
        bakeryId,
        language: null,
        ...person,
        email: 'teo@osier-lane.example',
        sessionId: '01a22670-d100-7a10-8c3f-4f0e9d2b6a55',
        sessionSeenAt: new Date(0),
      }
    case 'station':
      return which === 'alone'
        ? { ...station, personId: null }
        : {
            ...station,
            ...person,
            shiftId: '01a22670-d002-7a10-8c3f-4f0e9d2b6a55',
            shiftSeenAt: new Date(0),
            pinGivenAt: new Date(0),
          }
    case 'taster':
      return { kind, bakeryId, language: null, panelId: '01a22670-e2aa-7c31-9b1e-0a6d1c7f2e90', code: '417' }
    default:
      return { kind: 'job', bakeryId, language: null, job: which as 'owner-link' }
  }
}
