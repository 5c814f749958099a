import 'server-only'
import { z } from 'zod'
import { openCommand } from '../open-command'
import { createInvitation } from './create-invitation'

type Owner = { name: string; email: string; bakery: string }

/**
 * Makes a link by which an owner chooses a new password: for whoever runs the install, on the machine itself, when nobody
 * of the bakery can. No route calls it. Their other links for a new password end, their sessions when it is used.
 * @param email whose; may be left out where the install has one owner
 * @returns the link's secret; or the owners there are to choose from, none where the address is of no owner
 */
export const makeOwnerLink = openCommand({
  name: 'people.make-owner-link',
  input: z.strictObject({ email: z.string().trim().toLowerCase().optional(), bakery: z.string().optional() }),
  async run({ tx, now, input }): Promise<Made> {
    const owners = await tx.person.findMany({
      where: { role: 'owner', endedAt: null, ...(input.email === undefined ? {} : { email: input.email }), ...(input.bakery === undefined ? {} : { bakery: { name: input.bakery } }) },
      select: { bakeryId: true, id: true, name: true, email: true, bakery: { select: { name: true } } },
      orderBy: [{ bakery: { name: 'asc' } }, { email: 'asc' }],
      take: 50,
    })
    const [owner, ...others] = owners
    if (!owner || others.length > 0) return { value: { secret: null, owners: owners.map(({ name, email, bakery }) => ({ name, email, bakery: bakery.name })) }, audit: null, changed: [] }
    const { bakeryId, id: personId, name, email } = owner
    await tx.invitation.updateMany({ where: { bakeryId, OR: [{ personId }, { email }], usedAt: null, withdrawnAt: null }, data: { withdrawnAt: now } })
    const { secret } = await createInvitation(tx, { bakeryId, personId }, { purpose: 'reset', personId, name, email, role: 'owner', onMachine: true }, now)
    return { value: { secret, owners: [{ name, email, bakery: owner.bakery.name }] }, audit: { bakeryId, who: null, target: personId }, changed: ['team'] }
  },
})

type Made = {
  value: { secret: string | null; owners: Owner[] }
  audit: { bakeryId: string; who: null; target: string } | null
  changed: string[]
}
