import 'server-only'
import type { Db, Tx } from '../../db/client'
import type { PersonThere } from './second-person'

/** Everybody of a bakery who is there. */
export function peopleThere(from: Db | Tx, bakeryId: string): Promise<PersonThere[]> {
  return from.person.findMany({ where: { bakeryId, endedAt: null }, select: { id: true, role: true } })
}
