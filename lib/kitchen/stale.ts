import 'server-only'
import type { Tx } from '../db/client'
import { formatDateTime } from '../words/format/date'
import { Refusal } from './refusal'

/** What stands in the record and changes nothing of what it is about. */
const looksOnly = ['key.note-look', 'trials.open-key', 'shifts.open-dough-key']

/** A refusal that says who changed the record last and when, out of the bakery's own record. */
export async function staleRefusal(tx: Tx, { bakeryId }: { bakeryId: string }, targetId: string): Promise<Refusal> {
  const last = await tx.auditEntry.findFirst({
    where: { bakeryId, targetId, action: { notIn: looksOnly } },
    orderBy: { number: 'desc' },
    select: { at: true, personId: true },
  })
  const person = last?.personId
    ? await tx.person.findUnique({ where: { bakeryId_id: { bakeryId, id: last.personId } }, select: { name: true } })
    : null
  if (!last || !person) return new Refusal('stale-moved-on')
  const bakery = await tx.bakery.findUniqueOrThrow({ where: { bakeryId }, select: { locale: true, timeZone: true } })
  return new Refusal('stale', { who: person.name, at: formatDateTime(last.at, bakery) })
}
