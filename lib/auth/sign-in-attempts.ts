import 'server-only'
import type { Db, Tx } from '../db/client'
import { forgetAttempts, mayAttempt, takeBackAttempt } from './attempts'
import { hashSecret } from './secret'
import { clocksDifferMs } from './session-life'

/** As whom somebody tries to sign in (`signInName`), and from which network address. */
export type SignInTry = { who: string; address: string }

/** Tries are counted by person, so that what somebody may elsewhere under the same address lifts nothing here; without a person by the address. */
export function signInName(person: { bakeryId: string; personId: string } | null, email: string): string {
  return person ? `${person.bakeryId}:${person.personId}` : email
}

/** No more than 100 wrong tries in a row at one account (NIST SP 800-63B-4 on throttling, from memory); the waits before are common practice. */
const mostTries = 100
const atOneAddress = { freeTries: 5, mostTries }
/** Of one account from everywhere, and of everybody from one address: strangers cannot shut a person out in a few tries. */
const fromEverywhere = { freeTries: 50, mostTries }
/** Of everybody at one address it is only slowed down: a thousand million is never reached. */
const ofEverybody = { freeTries: 50, mostTries: 1_000_000_000 }
/** Where somebody signed in within this time, only their own tries from there count. */
const knownForMs = 30 * 24 * 60 * 60_000

const pairName = ({ who, address }: SignInTry) => `sign-in:${who}:${address}`
const personName = ({ who }: SignInTry) => `sign-in:${who}`
const knownHash = ({ who, address }: SignInTry) => hashSecret('limit', `known:${who}:${address}`)

/**
 * Counts a try to sign in, and says whether it may be judged: by person and address together, by person, and by address.
 * Where the person signed in of late only the first counts, so strangers elsewhere cannot lock them out.
 */
export async function maySignIn(db: Db | Tx, tried: SignInTry, now: Date): Promise<boolean> {
  if (!(await mayAttempt(db, pairName(tried), now, atOneAddress))) return false
  const isKnown = await db.signInLimit.count({
    where: {
      keyHash: knownHash(tried),
      lastAt: { gt: new Date(now.getTime() - knownForMs), lte: new Date(now.getTime() + clocksDifferMs) },
    },
  })
  if (isKnown > 0) return true
  if (!(await mayAttempt(db, personName(tried), now, fromEverywhere))) return false
  return mayAttempt(db, `sign-in-from:${tried.address}`, now, ofEverybody)
}

/** After a right password: forgets the person's wrong tries, and remembers the address as theirs. */
export async function rememberSignIn(db: Db | Tx, tried: SignInTry, now: Date): Promise<void> {
  await forgetSignInAttempts(db, tried, now)
  const keyHash = knownHash(tried)
  await db.signInLimit.upsert({
    where: { keyHash },
    create: { keyHash, failures: 0, lastAt: now },
    update: { lastAt: now },
  })
  await forgetKnownAddresses(db, now)
}

/** Forgets from where people signed in too long ago to count. */
export async function forgetKnownAddresses(db: Db | Tx, now: Date): Promise<void> {
  await db.signInLimit.deleteMany({ where: { failures: 0, lastAt: { lt: new Date(now.getTime() - knownForMs) } } })
}

/**
 * Where a password was right for somebody else of the same e-mail address: this try was no guess at this person. Those
 * before it may have been, and count on; otherwise whoever holds one of the two could guess at the other without end.
 */
export async function takeBackSignIn(db: Db | Tx, tried: SignInTry): Promise<void> {
  await takeBackAttempt(db, pairName(tried), atOneAddress)
  await takeBackAttempt(db, personName(tried), fromEverywhere)
}

/** Lifts the wait of a person, everywhere and at this address. */
export async function forgetSignInAttempts(db: Db | Tx, tried: SignInTry, now: Date): Promise<void> {
  await forgetAttempts(db, [pairName(tried), personName(tried)], now)
}
