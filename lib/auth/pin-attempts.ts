import 'server-only'
import type { Db, Tx } from '../db/client'
import { forgetAttempts, mayAttempt, takeBackAttempt } from './attempts'

type Whose = { bakeryId: string; personId: string }
type Place = { bakeryId: string; stationId: string }

/**
 * Six digits are a thousandth of a thousandth: no more than 100 wrong tries in a row at one person, wherever they are
 * made, until the person chooses a new PIN at the desk or it was taken from them there; and of everybody at one tablet.
 */
const ofPerson = { freeTries: 5, mostTries: 100 }
const ofStation = { freeTries: 10, mostTries: 100 }

const personName = ({ bakeryId, personId }: Whose) => `pin:${bakeryId}:${personId}`
const stationName = ({ bakeryId, stationId }: Place) => `pin-at:${bakeryId}:${stationId}`

/** Counts a try of a PIN, and says whether it may be judged. It touches nothing of the person's password. */
export async function mayTryPin(db: Db | Tx, q: Whose & { stationId: string }, now: Date): Promise<boolean> {
  if (!(await mayAttempt(db, personName(q), now, ofPerson))) return false
  return mayTryAtStation(db, q, now)
}

/** Counts a try of whoever cannot be told yet, as with a badge: of a tablet all that is tried there counts together. */
export function mayTryAtStation(db: Db | Tx, q: Place, now: Date): Promise<boolean> {
  return mayAttempt(db, stationName(q), now, ofStation)
}

/** After a right badge, or a right PIN: this one was no try at the tablet. What others tried there counts on. */
export function takeBackStationTry(db: Db | Tx, q: Place): Promise<void> {
  return takeBackAttempt(db, stationName(q), ofStation)
}

/** After a right PIN: forgets the person's wrong tries, and that this one was any at the tablet. */
export async function forgetPinTry(db: Db | Tx, q: Whose & { stationId: string }, now: Date): Promise<void> {
  await forgetPinTries(db, q, now)
  await takeBackStationTry(db, q)
}

/** After a new PIN, or none: forgets the wrong tries of the former one. */
export function forgetPinTries(db: Db | Tx, whose: Whose, now: Date): Promise<void> {
  return forgetAttempts(db, [personName(whose)], now)
}
