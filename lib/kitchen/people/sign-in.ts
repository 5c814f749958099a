import 'server-only'
import { isPassword } from '../../auth/password-hash'
import { hashSecret } from '../../auth/secret'
import { openSession } from '../../auth/sessions'
import { maySignIn, rememberSignIn } from '../../auth/sign-in-attempts'
import { db } from '../../db/client'
import { openCommand } from '../open-command'
import { signInInput } from './sign-in.input'

/**
 * Opens a session for an e-mail address and its password. An unknown address, a wrong password, a person switched
 * off and too many tries get the same answer after about the same work, so none of them can be told apart.
 * @returns the session's secret, or null; a failure at a known address is in that bakery's record
 */
export const signIn = openCommand({
  name: 'people.sign-in',
  input: signInInput,
  async prepare({ caller, now, input }) {
    const tried = { email: input.email, address: caller.address }
    const mayTry = await maySignIn(db(), tried, now)
    const person = await findByEmail(input.email)
    const matches = await isPassword(mayTry ? person?.hash : undefined, input.password)
    if (matches) await rememberSignIn(db(), tried, now)
    return { person, matches, mayTry }
  },
  async run({ tx, caller, now, prepared: { person, matches, mayTry } }) {
    if (!person) return { value: null, audit: null, changed: [] }
    const { bakeryId, personId, name, role } = person
    const who = { personId, name, role }
    // Read again: the person may have been switched off while the hash was computed.
    const active = await tx.person.count({ where: { bakeryId, id: personId, endedAt: null } })
    if (!matches || active === 0) {
      // Tries while locked stay out of the record: otherwise a stranger could fill it.
      const audit = mayTry ? { bakeryId, who: null, target: personId, action: 'refused.sign-in' } : null
      return { value: null, audit, changed: [] }
    }
    const sessionSecret = await openSession(tx, person, caller.device, now)
    return { value: { sessionSecret }, audit: { bakeryId, who, target: personId }, changed: [] }
  },
})

async function findByEmail(email: string) {
  const pointer = await db().signInPointer.findUnique({
    where: { hash: hashSecret('email', email), kind: 'email' },
    select: { bakeryId: true, targetId: true },
  })
  if (!pointer) return null
  const person = await db().person.findUnique({
    where: { bakeryId_id: { bakeryId: pointer.bakeryId, id: pointer.targetId } },
    select: { id: true, name: true, role: true, password: { select: { hash: true } } },
  })
  return person && { bakeryId: pointer.bakeryId, personId: person.id, name: person.name, role: person.role, hash: person.password?.hash }
}
