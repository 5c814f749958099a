import { sessionIdleMs, sessionLongestMs } from '../lib/auth/session-life'
import type { Caller } from '../lib/kitchen/caller'
import { signIn } from '../lib/kitchen/people/sign-in'
import { must } from './must'
import { demoPeople } from './people'

export type PersonKey = (typeof demoPeople)[number]['key']

/** Somebody of the invented bakery at a moment: signed in, with their password at hand. */
export type Crew = (who: PersonKey, at: Date) => Promise<Caller>

/** From where the demo's people work, as the record shows it. */
export const demoDevice = { kind: 'desk', address: 'demo', device: 'demo' } as const

/**
 * Signs people in as they would be: once, and again when their session was idle for too long or is over. A password
 * is slow to check by intention, so it is not checked for each reading.
 * @param passwords by the people's keys
 */
export function makeCrew(passwords: ReadonlyMap<string, string>): Crew {
  const sessions = new Map<PersonKey, { secret: string; openedAt: Date; usedAt: Date }>()
  return async (who, at) => {
    const password = passwords.get(who)
    const present = sessions.get(who)
    if (present && isOpen(present, at)) {
      present.usedAt = at
      return { ...demoDevice, sessionSecret: present.secret, password, now: () => at }
    }
    const email = demoPeople.find(({ key }) => key === who)?.email
    const session = must(await signIn.call({ ...demoDevice, sessionSecret: null, now: () => at }, { email, password }))
    if (!session) throw new Error(`${email} was not let in`)
    sessions.set(who, { secret: session.sessionSecret, openedAt: at, usedAt: at })
    return { ...demoDevice, sessionSecret: session.sessionSecret, password, now: () => at }
  }
}

/** The book notes a session's use once a minute, so it may count as idle a minute sooner. */
const noteMs = 60_000

function isOpen({ openedAt, usedAt }: { openedAt: Date; usedAt: Date }, at: Date): boolean {
  const sinceUse = at.getTime() - usedAt.getTime()
  return sinceUse >= 0 && sinceUse < sessionIdleMs - noteMs && at.getTime() - openedAt.getTime() < sessionLongestMs
}
