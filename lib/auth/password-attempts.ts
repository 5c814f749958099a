import 'server-only'
import type { Db, Tx } from '../db/client'
import { forgetAttempts, mayAttempt } from './attempts'

type Whose = { bakeryId: string; personId: string }

const limit = { freeTries: 5, mostTries: 100 }
const nameOf = ({ bakeryId, personId }: Whose) => `password:${bakeryId}:${personId}`

/** Counts a try of the password that a command asks for. Only somebody signed in as the person can make one. */
export function mayTryPassword(db: Db | Tx, whose: Whose, now: Date): Promise<boolean> {
  return mayAttempt(db, nameOf(whose), now, limit)
}

/** Forgets the wrong tries at commands, after a right password or a new one. */
export function forgetPasswordTries(db: Db | Tx, whose: Whose, now: Date): Promise<void> {
  return forgetAttempts(db, [nameOf(whose)], now)
}
