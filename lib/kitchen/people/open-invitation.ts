import 'server-only'
import { hashSecret } from '../../auth/secret'
import type { Db, Tx } from '../../db/client'

/** The invitation of a link, if it is still good: not used, not withdrawn, not over. */
export async function findOpenInvitation(from: Db | Tx, secret: string, now: Date) {
  const pointer = await from.signInPointer.findUnique({
    where: { hash: hashSecret('invitation', secret), kind: 'invitation' },
    select: { bakeryId: true, targetId: true },
  })
  if (!pointer) return null
  return from.invitation.findFirst({
    where: { bakeryId: pointer.bakeryId, id: pointer.targetId, usedAt: null, withdrawnAt: null, endsAt: { gt: now } },
    select: {
      bakeryId: true,
      id: true,
      purpose: true,
      personId: true,
      name: true,
      email: true,
      role: true,
      bakery: { select: { name: true } },
    },
  })
}
