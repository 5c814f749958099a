import 'server-only'
import type { Actor } from '../auth/actor'
import type { Tx } from '../db/client'
import { Refusal } from './refusal'

/** A refusal that says who changed the record last and when, out of the bakery's own record. */
export async function staleRefusal(tx: Tx, actor: Actor, targetId: string): Promise<Refusal> {
  const last = await tx.auditEntry.findFirst({
    where: { bakeryId: actor.bakeryId, targetId },
    orderBy: { number: 'desc' },
    select: { at: true, personId: true },
  })
  const person = last?.personId
    ? await tx.person.findUnique({ where: { bakeryId_id: { bakeryId: actor.bakeryId, id: last.personId } }, select: { name: true } })
    : null
  if (!last || !person) return new Refusal('stale-moved-on')
  return new Refusal('stale', { who: person.name, at: last.at.toISOString() })
}
