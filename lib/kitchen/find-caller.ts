import 'server-only'
import { findActor, type Actor } from '../auth/actor'
import { db } from '../db/client'
import { readAgainWhenGone } from '../db/transaction'
import type { Caller } from './caller'

/** The person behind a caller, as the database knows them at this moment; null for nobody. */
export function findCaller(caller: Caller, now: Date): Promise<Actor | null> {
  return readAgainWhenGone(() => findActor(db(), caller.sessionSecret, now))
}
