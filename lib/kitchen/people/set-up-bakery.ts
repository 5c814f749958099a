import 'server-only'
import { hashPassword } from '../../auth/password-hash'
import { hashSecret } from '../../auth/secret'
import { openSession } from '../../auth/sessions'
import { openCommand } from '../open-command'
import { Refusal } from '../refusal'
import { mustBeGoodPassword } from './must-be-good-password'
import { createBakery, createPerson } from './new-bakery'
import { setUpBakeryInput } from './set-up-bakery.input'

/**
 * Sets up the first bakery of an empty install, with its owner, by the one-time first-run link.
 * Refuses: link-dead, a bad password.
 */
export const setUpBakery = openCommand({
  name: 'people.set-up-bakery',
  input: setUpBakeryInput,
  async prepare({ input }) {
    mustBeGoodPassword(input.password, [input.bakeryName, input.name, input.email])
    return hashPassword(input.password)
  },
  async run({ tx, caller, now, input, prepared: passwordHash }) {
    const { count } = await tx.install.updateMany({
      where: {
        id: 1,
        firstRunHash: hashSecret('first-run', input.secret),
        firstRunUsedAt: null,
        firstRunEndsAt: { gt: now },
      },
      data: { firstRunUsedAt: now },
    })
    if (count !== 1) throw new Refusal('link-dead')
    const { secret: _, name, email, password: __, bakeryName, ...settings } = input
    const bakeryId = await createBakery(tx, bakeryName, settings, now)
    const personId = await createPerson(tx, bakeryId, { name, email, role: 'owner', passwordHash }, now)
    const sessionSecret = await openSession(tx, { bakeryId, personId }, caller.device, now)
    return {
      value: { sessionSecret },
      audit: {
        bakeryId,
        who: { kind: 'desk', personId, name, role: 'owner' },
        target: personId,
        after: { bakery: bakeryName, owner: name, email },
      },
    }
  },
})
