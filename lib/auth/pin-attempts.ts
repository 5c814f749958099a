import 'server-only'
import type { Db, Tx } from '../db/client'
import { forgetAttempts, mayAttempt, takeBackAttempt } from './attempts'

type Whose = { bakeryId: string; personId: string }

/**
 * Six digits are a thousandth of a thousandth: no more than 100 wrong tries in a row at one person, wherever they are
 * made, until the person chooses a new PIN at the desk or it was taken from them there; and of everybody at one tablet.
 */
const ofPerson = { freeTries: 5, mostTries: 100 }
const ofStation = { freeTries: 10, mostTries: 100 }

const personName = ({ bakeryId, personId }: Whose) => `pin:${bakeryId}:${personId}`
const stationName = (bakeryId: string, stationId: string) => `pin-at:${bakeryId}:${stationId}`

/** Counts a try of a PIN, and says whether it may be judged. It touches nothing of the person's password. */
export async function mayTryPin(db: Db | Tx, q: Whose & { stationId: string }, now: Date): Promise<boolean> {
  if (!(await mayAttempt(db, personName(q), now, ofPerson))) return false
  return mayAttempt(db, stationName(q.bakeryId, q.stationId), now, ofStation)
}

/** After a right PIN: forgets the person's wrong tries, and that this one was any at the tablet. What others tried there counts on. */
export async function forgetPinTry(db: Db | Tx, q: Whose & { stationId: string }, now: Date): Promise<void> {
  await forgetPinTries(db, q, now)
  await takeBackAttempt(db, stationName(q.bakeryId, q.stationId), ofStation)
}

/** After a new PIN, or none: forgets the wrong tries of the former one. */
export function forgetPinTries(db: Db | Tx, whose: Whose, now: Date): Promise<void> {
  return forgetAttempts(db, [personName(whose)], now)
}
