import 'server-only'
import type { DeskActor } from '../../auth/actor'
import type { Db } from '../../db/client'
import { peopleThere } from '../amendments/people-there'
import { decidesAs } from '../amendments/second-person'
import { fewOfAll } from './few-of'

/** More amendments than these nobody decides on in a day; beyond them the count is a least one. */
const mostLookedAt = 200

/** The amendments that somebody may say yes or no to, those that wait longest first. */
export async function amendmentsToDecide(db: Db, { bakeryId, personId, role }: DeskActor) {
  const open = await db.amendment.findMany({
    where: { bakeryId, verdict: null },
    select: {
      id: true,
      trialId: true,
      proposedById: true,
      at: true,
      proposedBy: { select: { name: true } },
      batch: { select: { code: true, trial: { select: { number: true, formula: { select: { name: true } } } } } },
    },
    orderBy: [{ at: 'asc' }, { id: 'asc' }],
    take: mostLookedAt + 1,
  })
  // By far the most desks have none, and need no second statement.
  const people = open.length > 0 ? await peopleThere(db, bakeryId) : []
  const theirs = open
    .slice(0, mostLookedAt)
    .filter(({ proposedById }) => 'as' in decidesAs({ person: { id: personId, role }, proposedById, people }))
  return fewOfAll(
    theirs.map(({ id, trialId, at, proposedBy, batch: { code, trial } }) => ({
      id,
      trialId,
      code,
      number: trial.number,
      formula: trial.formula.name,
      who: proposedBy.name,
      since: at,
    })),
    open.length > mostLookedAt,
  )
}
