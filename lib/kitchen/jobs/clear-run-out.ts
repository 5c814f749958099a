import 'server-only'
import { forgetAttempts } from '../../auth/attempts'
import { endedKeptMs } from '../../auth/session-life'
import { forgetKnownAddresses } from '../../auth/sign-in-attempts'
import { db } from '../../db/client'
import { clearLongComing } from '../photos/clear-long-coming'
import type { Job } from './job'

/** In one statement, so that none is long. */
const atOnce = 500

/**
 * Clears away sessions, links, shifts at tablets and codes of tablets that ended long ago, with what pointed at them, tries to sign in that no longer
 * count, and photos that were begun and never came. Nothing of the record, of the work, or of what only grows: what forms came to stays.
 */
export const clearRunOut: Job = {
  name: 'clear-run-out',
  everyMs: 24 * 60 * 60_000,
  async run({ now, signal }) {
    await forgetAttempts(db(), [], now)
    await forgetKnownAddresses(db(), now)
    await clearLongComing(db(), now, signal)
    const before = new Date(now.getTime() - endedKeptMs)
    for (const clear of [clearSessions, clearInvitations, clearStationShifts, clearStationCodes]) {
      for (let cleared = atOnce; cleared === atOnce; cleared = await clear(before)) signal.throwIfAborted()
    }
  },
}

/** A session and its pointer go by one statement, so that neither is ever without the other. @returns how many went */
async function clearSessions(before: Date): Promise<number> {
  const [row] = await db().$queryRaw<{ cleared: number }[]>`
    WITH past AS (SELECT bakery_id, id FROM session WHERE least(ends_at, ended_at) < ${before} LIMIT ${atOnce} FOR UPDATE SKIP LOCKED),
      gone AS (DELETE FROM session USING past WHERE session.bakery_id = past.bakery_id AND session.id = past.id RETURNING session.bakery_id, session.id),
      pointers AS (DELETE FROM sign_in_pointer AS pointer USING past WHERE pointer.kind = 'session' AND pointer.bakery_id = past.bakery_id AND pointer.target_id = past.id)
    SELECT count(*)::int AS cleared FROM gone`
  return row?.cleared ?? 0
}

/** A link and its pointer, alike. A link has ended when it was used or withdrawn, or when its time is over. */
async function clearInvitations(before: Date): Promise<number> {
  const [row] = await db().$queryRaw<{ cleared: number }[]>`
    WITH past AS (SELECT bakery_id, id FROM invitation WHERE least(ends_at, used_at, withdrawn_at) < ${before} LIMIT ${atOnce} FOR UPDATE SKIP LOCKED),
      gone AS (DELETE FROM invitation USING past WHERE invitation.bakery_id = past.bakery_id AND invitation.id = past.id RETURNING invitation.bakery_id, invitation.id),
      pointers AS (DELETE FROM sign_in_pointer AS pointer USING past WHERE pointer.kind = 'invitation' AND pointer.bakery_id = past.bakery_id AND pointer.target_id = past.id)
    SELECT count(*)::int AS cleared FROM gone`
  return row?.cleared ?? 0
}

/** A shift at a tablet and its pointer, alike. */
async function clearStationShifts(before: Date): Promise<number> {
  const [row] = await db().$queryRaw<{ cleared: number }[]>`
    WITH past AS (SELECT bakery_id, id FROM station_shift WHERE least(ends_at, ended_at) < ${before} LIMIT ${atOnce} FOR UPDATE SKIP LOCKED),
      gone AS (DELETE FROM station_shift AS shift USING past WHERE shift.bakery_id = past.bakery_id AND shift.id = past.id RETURNING shift.bakery_id, shift.id),
      pointers AS (DELETE FROM sign_in_pointer AS pointer USING past WHERE pointer.kind = 'station_shift' AND pointer.bakery_id = past.bakery_id AND pointer.target_id = past.id)
    SELECT count(*)::int AS cleared FROM gone`
  return row?.cleared ?? 0
}

/** The code of a tablet that nobody typed. The tablet stays in the list, as one whose code ran out. */
function clearStationCodes(before: Date): Promise<number> {
  return db().$executeRaw`
    DELETE FROM sign_in_pointer AS pointer USING station
    WHERE pointer.kind = 'station_code' AND pointer.bakery_id = station.bakery_id AND pointer.target_id = station.id
      AND station.code_ends_at < ${before}`
}
