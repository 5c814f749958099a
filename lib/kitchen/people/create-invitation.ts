import 'server-only'
import { v7 as uuid } from 'uuid'
import { hashSecret, makeSecret } from '../../auth/secret'
import { linkLifeMs, machineLinkLifeMs } from '../../auth/session-life'
import type { Tx } from '../../db/client'
import type { InvitationPurpose, Role } from '../../db/generated/enums'

type Invited = {
  purpose: InvitationPurpose
  personId?: string
  name: string
  email: string
  role: Role
  onMachine?: true
}

/** Writes a single-use link and gives its secret, which is kept nowhere. A step shared by inviting and resetting. */
export async function createInvitation(
  tx: Tx,
  giver: { bakeryId: string; personId: string },
  invited: Invited,
  now: Date,
): Promise<{ id: string; secret: string }> {
  const id = uuid()
  const secret = makeSecret()
  // An invitation that ran out no longer stands in the way of a new one.
  await tx.invitation.updateMany({
    where: { bakeryId: giver.bakeryId, email: invited.email, usedAt: null, withdrawnAt: null, endsAt: { lte: now } },
    data: { withdrawnAt: now },
  })
  await tx.invitation.create({
    data: {
      bakeryId: giver.bakeryId,
      id,
      purpose: invited.purpose,
      personId: invited.personId ?? null,
      name: invited.name,
      email: invited.email,
      role: invited.role,
      invitedById: giver.personId,
      createdAt: now,
      endsAt: new Date(now.getTime() + (invited.onMachine ? machineLinkLifeMs : linkLifeMs)),
      onMachine: invited.onMachine ?? false,
    },
  })
  await tx.signInPointer.create({
    data: { hash: hashSecret('invitation', secret), kind: 'invitation', bakeryId: giver.bakeryId, targetId: id },
  })
  return { id, secret }
}
