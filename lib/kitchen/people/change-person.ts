import 'server-only'
import type { DeskActor } from '../../auth/actor'
import { endBadge } from '../../auth/badges'
import { endSessions } from '../../auth/sessions'
import { endStationShifts } from '../../auth/station-shifts'
import type { Tx } from '../../db/client'
import { command } from '../command'
import { Refusal } from '../refusal'
import { staleRefusal } from '../stale'
import { changePersonInput } from './change-person.input'
import { mayGiveRole, mayManage } from './rules'

/**
 * Changes a person's name or role, or switches them off or on again. Switching off, and another role, end their
 * sessions, their badge and their shifts at tablets at once and withdraw the links that they made or that are for them; what they signed keeps their name.
 * Refuses: not-found, own-role, not-allowed, role-not-yours-to-give, last-owner, stale.
 */
export const changePerson = command({
  name: 'people.change-person',
  input: changePersonInput,
  right: 'manage-people',
  async run({ tx, actor, now, input }) {
    // Two owners who demote each other at once must not leave the bakery without one.
    await tx.$queryRaw`SELECT 1 FROM bakery WHERE bakery_id = ${actor.bakeryId}::uuid FOR UPDATE`
    const key = { bakeryId: actor.bakeryId, id: input.personId }
    const person = await tx.person.findUnique({
      where: { bakeryId_id: key },
      select: { id: true, name: true, role: true, activeAt: true, endedAt: true },
    })
    if (!person) throw new Refusal('not-found')
    const before = { name: person.name, role: person.role, works: !person.endedAt }
    const after = { name: input.name, role: input.role, works: input.works }
    mustBeAllowed(actor, person, after)
    // Nobody leaves before they came, also when the clock was ahead then.
    const leaving = person.activeAt > now ? person.activeAt : now
    const { count } = await tx.person.updateMany({
      where: { ...key, revision: input.seenRevision },
      data: {
        name: after.name,
        role: after.role,
        endedAt: after.works ? null : (person.endedAt ?? leaving),
        revision: { increment: 1 },
      },
    })
    if (count !== 1) throw await staleRefusal(tx, actor, input.personId)
    await mustKeepAnOwner(tx, actor.bakeryId)
    if (!after.works || after.role !== before.role) {
      // Links first: one that is being used at this moment has opened its session by the time it lets go.
      await withdrawLinks(tx, actor.bakeryId, person.id, now)
      await endSessions(tx, { bakeryId: actor.bakeryId, personId: person.id }, now)
      await endBadge(tx, { bakeryId: actor.bakeryId, personId: person.id }, now)
      await endStationShifts(tx, { bakeryId: actor.bakeryId, personId: person.id }, now)
    }
    return { value: null, audit: { target: person.id, before, after } }
  },
})

function mustBeAllowed(
  actor: DeskActor,
  person: { id: string; role: DeskActor['role'] },
  after: { role: DeskActor['role'] },
): void {
  if (person.id === actor.personId) throw new Refusal('own-role')
  if (!mayManage(actor, person)) throw new Refusal('not-allowed')
  if (!mayGiveRole(actor.role, after.role)) throw Refusal.at('role', 'role-not-yours-to-give')
}

async function mustKeepAnOwner(tx: Tx, bakeryId: string): Promise<void> {
  const owners = await tx.person.count({ where: { bakeryId, role: 'owner', endedAt: null } })
  if (owners === 0) throw new Refusal('last-owner')
}

async function withdrawLinks(tx: Tx, bakeryId: string, personId: string, now: Date): Promise<void> {
  await tx.invitation.updateMany({
    where: { bakeryId, usedAt: null, withdrawnAt: null, OR: [{ personId }, { invitedById: personId }] },
    data: { withdrawnAt: now },
  })
}
