import 'server-only'
import { z } from 'zod'
import { openQuery } from '../open-query'

/** More than anybody would choose from in a terminal. */
const mostOwners = 50

/**
 * The owners of the install, of every bakery: for whoever runs it, on the machine itself. No route calls it.
 * @param email of one address only; @param bakery of bakeries of this name only
 */
export const findOwners = openQuery({
  name: 'people.find-owners',
  input: z.strictObject({ email: z.string().trim().toLowerCase().optional(), bakery: z.string().optional() }),
  async run({ db, input }) {
    const owners = await db.person.findMany({
      where: {
        role: 'owner',
        endedAt: null,
        ...(input.email === undefined ? {} : { email: input.email }),
        ...(input.bakery === undefined ? {} : { bakery: { name: input.bakery } }),
      },
      select: { bakeryId: true, id: true, name: true, email: true, bakery: { select: { name: true } } },
      orderBy: [{ bakery: { name: 'asc' } }, { email: 'asc' }],
      take: mostOwners,
    })
    return owners.map(({ bakeryId, id, name, email, bakery }) => ({
      bakeryId,
      personId: id,
      name,
      email,
      bakery: bakery.name,
    }))
  },
})
