import 'server-only'
import { z } from 'zod'
import { query } from '../query'

/**
 * Where the bakery's record stands at this moment: the number of its last entry and its hash. On paper it shows later
 * that nothing before it was written anew.
 */
export const getAnchor = query({
  name: 'audit.get-anchor',
  input: z.strictObject({}),
  right: 'read-work',
  async run({ db, actor: { bakeryId } }) {
    const head = await db.auditHead.findUniqueOrThrow({ where: { bakeryId }, select: { number: true, hash: true } })
    return { number: Number(head.number), hash: head.hash }
  },
})
