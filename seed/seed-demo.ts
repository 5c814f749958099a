import { randomInt } from 'node:crypto'
import { acceptInvitation } from '../lib/kitchen/people/accept-invitation'
import { invitePerson } from '../lib/kitchen/people/invite-person'
import type { Caller } from '../lib/kitchen/caller'
import { signIn } from '../lib/kitchen/people/sign-in'
import { setUpBakery } from '../lib/kitchen/people/set-up-bakery'
import { writePrivateFile } from '../lib/ops/secrets'
import { seedFormulas } from './formulas'
import { must } from './must'
import { demoBakery, demoPeople } from './people'
import { seedStores, type DemoCallers } from './stores'
import { seedTrials } from './trials'

/**
 * Fills an empty demo install by running the real commands, and writes who can sign in how.
 * @param firstRunSecret secret of the install's first-run link
 * @param signInFile file for the passwords, which are random for each install
 */
export async function seedDemo(firstRunSecret: string, signInFile: string): Promise<void> {
  const passwords = new Map<string, string>(demoPeople.map((person) => [person.key, makePassword()]))
  await seedPeople(firstRunSecret, passwords)
  const at: CallersAt = async (daysAgo) => {
    const callers = await Promise.all(demoPeople.map(async ({ key, email }) => [key, await signedIn(email, passwords.get(key), daysAgo)] as const))
    return Object.fromEntries(callers) as DemoCallers
  }
  const stores = await seedStores(await at(415))
  const formulas = await seedFormulas(at, stores.ingredients)
  await seedTrials(at, stores, formulas)
  const lines = demoPeople.map((person) => `${person.email}  ${passwords.get(person.key)}  ${person.name}, ${person.role.replace('_', ' ')}`)
  writePrivateFile(signInFile, `Sign in to the invented bakery as one of its people:\n${lines.join('\n')}\n`)
}

/** Everybody of the invented bakery, signed in on a day so long ago, with their passwords at hand. */
export type CallersAt = (daysAgo: number) => Promise<DemoCallers>

const from = { address: 'demo', device: 'demo' }

async function signedIn(email: string, password: string | undefined, daysAgo: number): Promise<Caller> {
  const now = dayBefore(daysAgo)
  const session = must(await signIn.call({ ...from, sessionSecret: null, now }, { email, password }))
  if (!session) throw new Error(`${email} was not let in`)
  return { ...from, sessionSecret: session.sessionSecret, password, now }
}

async function seedPeople(firstRunSecret: string, passwords: Map<string, string>): Promise<void> {
  const nobody = { ...from, sessionSecret: null, now: dayBefore(420) }
  const [owner, ...others] = demoPeople
  const { sessionSecret } = must(
    await setUpBakery.call(nobody, { ...demoBakery, secret: firstRunSecret, name: owner.name, email: owner.email, password: passwords.get(owner.key) }),
  )
  for (const person of others) {
    const { secret } = must(await invitePerson.call({ ...nobody, sessionSecret }, { name: person.name, email: person.email, role: person.role }))
    must(await acceptInvitation.call(nobody, { secret, password: passwords.get(person.key) }))
  }
}

/** The clock as it stood so many days ago. */
function dayBefore(daysAgo: number): () => Date {
  const moment = new Date(Date.now() - daysAgo * 24 * 60 * 60_000)
  return () => moment
}

/** A password that can be read out: four groups of five from letters and digits that are not mistaken for each other. */
function makePassword(): string {
  const letters = 'abcdefghjkmnpqrstuvwxyz23456789'
  const group = () => Array.from({ length: 5 }, () => letters[randomInt(letters.length)]).join('')
  return [group(), group(), group(), group()].join('-')
}
