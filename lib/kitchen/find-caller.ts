import 'server-only'
import type { Actor } from '../auth/actor'
import { findActor } from '../auth/find-actor'
import { touchSession } from '../auth/sessions'
import { touchStation } from '../auth/station-shifts'
import { db } from '../db/client'
import { readAgainWhenGone } from '../db/transaction'
import type { Caller } from './caller'

/** Who a caller is, where that is no use of their session or station: for what a page does by itself. */
export function lookUpCaller(caller: Caller, now: Date): Promise<Actor | null> {
  return readAgainWhenGone(() => findActor(db(), caller, now))
}

/**
 * Who a caller is, as the database knows them at this moment; null for nobody. That is asked once a request, so it is
 * here that the use of a session, or of a station, is noted.
 */
export async function findCaller(caller: Caller, now: Date): Promise<Actor | null> {
  const actor = await lookUpCaller(caller, now)
  if (actor?.kind === 'desk') await touchSession(db(), actor, now)
  if (actor?.kind === 'station') await touchStation(db(), actor, now)
  return actor
}
