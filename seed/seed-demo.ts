import { randomInt } from 'node:crypto'
import { acceptInvitation } from '../lib/kitchen/people/accept-invitation'
import { invitePerson } from '../lib/kitchen/people/invite-person'
import { setUpBakery } from '../lib/kitchen/people/set-up-bakery'
import { writePrivateFile } from '../lib/ops/secrets'
import { must } from './must'
import { demoBakery, demoPeople } from './people'
import { seedStores, type DemoCallers } from './stores'

/**
 * Fills an empty demo install by running the real commands, and writes who can sign in how.
 * @param firstRunSecret secret of the install's first-run link
 * @param signInFile file for the passwords, which are random for each install
 */
export async function seedDemo(firstRunSecret: string, signInFile: string): Promise<void> {
  const caller = { address: 'demo', device: 'demo' }
  const nobody = { ...caller, sessionSecret: null }
  const [owner, ...others] = demoPeople
  const passwords = new Map<string, string>(demoPeople.map((person) => [person.key, makePassword()]))
  const { sessionSecret } = must(
    await setUpBakery.call(
      nobody,
      { ...demoBakery, secret: firstRunSecret, name: owner.name, email: owner.email, password: passwords.get(owner.key) },
    ),
  )
  const callers: DemoCallers = { owner: { ...caller, sessionSecret }, head: nobody, early: nobody, late: nobody }
  for (const person of others) {
    const { secret } = must(await invitePerson.call(callers.owner, { name: person.name, email: person.email, role: person.role }))
    const joined = must(await acceptInvitation.call(nobody, { secret, password: passwords.get(person.key) }))
    callers[person.key] = { ...caller, sessionSecret: joined.sessionSecret }
  }
  await seedStores(callers)
  const lines = demoPeople.map((person) => `${person.email}  ${passwords.get(person.key)}  ${person.name}, ${person.role.replace('_', ' ')}`)
  writePrivateFile(signInFile, `Sign in to the invented bakery as one of its people:\n${lines.join('\n')}\n`)
}

/** A password that can be read out: four groups of five from letters and digits that are not mistaken for each other. */
function makePassword(): string {
  const letters = 'abcdefghjkmnpqrstuvwxyz23456789'
  const group = () => Array.from({ length: 5 }, () => letters[randomInt(letters.length)]).join('')
  return [group(), group(), group(), group()].join('-')
}
