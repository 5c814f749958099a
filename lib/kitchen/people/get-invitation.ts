import 'server-only'
import { z } from 'zod'
import { openQuery } from '../open-query'
import { Refusal } from '../refusal'
import { linkSecret } from '../text.input'
import { findOpenInvitation } from './open-invitation'

/** What a single-use link is for, to whoever holds it. Refuses: link-dead. */
export const getInvitation = openQuery({
  name: 'people.get-invitation',
  input: z.strictObject({ secret: linkSecret }),
  async run({ db, now, input }) {
    const invitation = await findOpenInvitation(db, input.secret, now)
    if (!invitation) throw new Refusal('link-dead')
    const { purpose, name, email, role, bakery } = invitation
    return { purpose, name, email, role, bakeryName: bakery.name }
  },
})
