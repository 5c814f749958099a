import 'server-only'
import { z } from 'zod'
import { giveBadge } from '../../auth/badges'
import { badgeText } from '../badge-text.input'
import { command } from '../command'
import { Refusal } from '../refusal'

/**
 * Makes the caller's own badge for shared tablets, in place of the one that they had. Their password is asked.
 * @returns what its code says, shown once
 * Refuses: badge-wants-pin.
 */
export const makeOwnBadge = command({
  name: 'people.make-own-badge',
  input: z.strictObject({}),
  right: 'own-account',
  isSecret: true,
  askPassword: true,
  async run({ tx, actor: { bakeryId, personId }, now }) {
    const pins = await tx.pin.count({ where: { bakeryId, personId } })
    if (pins === 0) throw new Refusal('badge-wants-pin')
    const secret = await giveBadge(tx, { bakeryId, personId, madeById: personId }, now)
    return { value: { code: badgeText(secret) }, audit: { target: personId } }
  },
})
