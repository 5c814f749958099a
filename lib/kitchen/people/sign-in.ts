import 'server-only'
import { isPassword } from '../../auth/password-hash'
import { hashSecret } from '../../auth/secret'
import { openSession } from '../../auth/sessions'
import { maySignIn, rememberSignIn, signInName, takeBackSignIn, type SignInTry } from '../../auth/sign-in-attempts'
import { db } from '../../db/client'
import type { Role } from '../../db/generated/enums'
import type { Caller } from '../caller'
import { openCommand } from '../open-command'
import { signInInput } from './sign-in.input'

type Known = { bakeryId: string; personId: string; name: string; role: Role; hash: string | null }

/** As many passwords are tried for one address. */
const mostBakeries = 5
/** Longer than this many passwords take to be tried on a machine that is not overloaded. */
const refusedAfterMs = 300

/**
 * Opens a session for an e-mail address and its password. An unknown address, a wrong password, a person switched
 * off and too many tries get the same answer after the same time, so none of them can be told apart. An address may be
 * of people in several bakeries: the password says whose, and if it is right in more than one, the one used last.
 * @returns the session's secret, or null; a failure at a known address is in the record of its bakeries
 */
export const signIn = openCommand({
  name: 'people.sign-in',
  input: signInInput,
  refusedAfterMs,
  async prepare({ caller, now, input }) {
    const people = await findByEmail(input.email)
    const [matching, wrong]: [Known[], Known[]] = [[], []]
    // Nobody's password takes as long as somebody's, and a locked person's as well.
    for (const person of people.length > 0 ? people : [null]) {
      const mayTry = await maySignIn(db(), tryOf(person, input.email, caller), now)
      const matches = await isPassword(mayTry ? (person?.hash ?? undefined) : undefined, input.password)
      if (person && mayTry) (matches ? matching : wrong).push(person)
    }
    for (const person of matching) await rememberSignIn(db(), tryOf(person, input.email, caller), now)
    if (matching.length > 0) for (const person of wrong) await takeBackSignIn(db(), tryOf(person, input.email, caller))
    return { matching, wrong }
  },
  async run({ tx, caller, now, prepared: { matching, wrong } }) {
    for (const person of matching) {
      const { bakeryId, personId, name, role } = person
      // Read again: the person may have been switched off while the hash was computed.
      const active = await tx.person.count({ where: { bakeryId, id: personId, endedAt: null } })
      if (active === 0) continue
      const sessionSecret = await openSession(tx, person, caller.device, now)
      return {
        value: { sessionSecret },
        audit: { bakeryId, who: { kind: 'desk', personId, name, role }, target: personId },
      }
    }
    // Tries while locked stay out of the record: otherwise a stranger could fill it.
    const audit = [...matching, ...wrong].map(({ bakeryId, personId }) => ({
      bakeryId,
      who: null,
      target: personId,
      action: 'refused.sign-in',
    }))
    return { value: null, audit }
  },
})

function tryOf(person: Known | null, email: string, { address }: Caller): SignInTry {
  return { who: signInName(person, email), address }
}

/** The people of an address, those who work there still and who signed in last first. */
function findByEmail(email: string): Promise<Known[]> {
  return db().$queryRaw<Known[]>`
    SELECT person.bakery_id AS "bakeryId", person.id AS "personId", person.name, person.role::text, password.hash
    FROM sign_in_pointer AS pointer
    JOIN person ON person.bakery_id = pointer.bakery_id AND person.id = pointer.target_id
    LEFT JOIN password ON password.bakery_id = person.bakery_id AND password.person_id = person.id
    WHERE pointer.hash = ${hashSecret('email', email)} AND pointer.kind = 'email'
    ORDER BY person.ended_at IS NOT NULL,
      (SELECT max(opened_at) FROM session WHERE session.bakery_id = person.bakery_id AND session.person_id = person.id) DESC NULLS LAST,
      person.bakery_id
    LIMIT ${mostBakeries}`
}
