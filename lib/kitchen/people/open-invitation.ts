import 'server-only'
import { hashSecret } from '../../auth/secret'
import { latestMoment } from '../../auth/session-life'
import type { Db, Tx } from '../../db/client'
import { mayGiveRole, mayManage } from './rules'

/**
 * The invitation of a link, if it is still good: not used, not withdrawn, not over, not from a clock that was ahead, and whoever made it might make it
 * now, for this person as they are now. One that was made on the machine is good for an owner.
 */
export async function findOpenInvitation(from: Db | Tx, secret: string, now: Date) {
  const pointer = await from.signInPointer.findFirst({
    where: { hash: hashSecret('invitation', secret), kind: 'invitation' },
    select: { bakeryId: true, targetId: true },
  })
  if (!pointer) return null
  const invitation = await from.invitation.findFirst({
    where: {
      bakeryId: pointer.bakeryId,
      id: pointer.targetId,
      usedAt: null,
      withdrawnAt: null,
      endsAt: { gt: now },
      createdAt: { lte: latestMoment() },
    },
    select: {
      bakeryId: true,
      id: true,
      purpose: true,
      personId: true,
      name: true,
      email: true,
      role: true,
      onMachine: true,
      bakery: { select: { name: true } },
      invitedBy: { select: { id: true, role: true, endedAt: true } },
      person: { select: { id: true, role: true, endedAt: true } },
    },
  })
  if (!invitation) return null
  const { invitedBy, person, onMachine, ...rest } = invitation
  if (invitedBy.endedAt || person?.endedAt) return null
  if (onMachine) return person?.role === 'owner' ? rest : null
  const giver = { personId: invitedBy.id, role: invitedBy.role }
  return (person ? mayManage(giver, person) : mayGiveRole(giver.role, rest.role)) ? rest : null
}
