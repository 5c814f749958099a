import { randomInt } from 'node:crypto'
import { acceptInvitation } from '../lib/kitchen/people/accept-invitation'
import { invitePerson } from '../lib/kitchen/people/invite-person'
import { setUpBakery } from '../lib/kitchen/people/set-up-bakery'
import { bakeryClock, type BakeryClock } from './bakery-clock'
import { demoDevice, makeCrew } from './crew'
import { decideOnOats, decideOnWholemeal } from './decisions'
import { seedFormulas } from './formulas'
import { must } from './must'
import { demoBakery, demoPeople } from './people'
import { seedNewPrices, seedStores } from './stores'
import { seedOatTrial, seedOpenTrials, seedWholemealTrial } from './trials'

/**
 * Fills an empty demo install by running the real commands at past times.
 * @param firstRunSecret secret of the install's first-run link
 * @param now when the demo is made; nothing in it is later
 * @returns who can sign in how, to be kept from others: the passwords are random for each install
 */
export async function seedDemo(firstRunSecret: string, now = new Date()): Promise<string> {
  const passwords = new Map<string, string>(demoPeople.map((person) => [person.key, makePassword()]))
  const clock = bakeryClock(now)
  await seedPeople(firstRunSecret, passwords, clock)
  const crew = makeCrew(passwords)
  const stores = await seedStores(await crew('head', clock.on(415, '13:00')))
  const formulas = await seedFormulas((who, daysAgo) => crew(who, clock.on(daysAgo, '13:30')), stores.ingredients)
  await seedNewPrices(await crew('head', clock.on(90, '12:30')), stores)
  const work = { crew, clock, stores, formulas }
  // In the order of their days.
  await decideOnWholemeal(work, await seedWholemealTrial(work))
  await decideOnOats(work, await seedOatTrial(work))
  await seedOpenTrials(work)
  const lines = demoPeople.map(
    (person) => `${person.email}  ${passwords.get(person.key)}  ${person.name}, ${person.role.replace('_', ' ')}`,
  )
  return `Sign in to the invented bakery as one of its people:\n${lines.join('\n')}\n`
}

async function seedPeople(firstRunSecret: string, passwords: Map<string, string>, clock: BakeryClock): Promise<void> {
  const nobody = { ...demoDevice, sessionSecret: null, now: () => clock.on(420, '12:00') }
  const [owner, ...others] = demoPeople
  const { sessionSecret } = must(
    await setUpBakery.call(nobody, {
      ...demoBakery,
      secret: firstRunSecret,
      name: owner.name,
      email: owner.email,
      password: passwords.get(owner.key),
    }),
  )
  for (const person of others) {
    const { secret } = must(
      await invitePerson.call(
        { ...nobody, sessionSecret },
        { name: person.name, email: person.email, role: person.role },
      ),
    )
    must(await acceptInvitation.call(nobody, { secret, password: passwords.get(person.key) }))
  }
}

/** A password that can be read out: four groups of five from letters and digits that are not mistaken for each other. */
function makePassword(): string {
  const letters = 'abcdefghjkmnpqrstuvwxyz23456789'
  const group = () => Array.from({ length: 5 }, () => letters[randomInt(letters.length)]).join('')
  return [group(), group(), group(), group()].join('-')
}
