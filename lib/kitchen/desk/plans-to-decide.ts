import 'server-only'
import type { DeskActor } from '../../auth/actor'
import type { Db } from '../../db/client'
import { handsOf, type Deciders } from '../trials/hands-of-plan'
import { decisionBar } from '../trials/rules'
import { fewOfAll } from './few-of'
import { trialColumns, trialRow } from './trial-row'

/** More plans than these nobody decides on in a day; beyond them the count is a least one. */
const mostLookedAt = 200

/**
 * The proposed plans that somebody may decide on, those that wait longest first.
 * @param ofBakery who of its people could decide at all
 */
export async function plansToDecide(db: Db, { bakeryId, personId }: DeskActor, ofBakery: Promise<Deciders>) {
  const [bakery, proposed] = await Promise.all([
    ofBakery,
    db.trial.findMany({
      where: { bakeryId, state: 'proposed' },
      select: { ...trialColumns, proposedById: true, authors: { select: { personId: true } } },
      orderBy: [{ proposedAt: 'asc' }, { number: 'asc' }],
      take: mostLookedAt + 1,
    }),
  ])
  const theirs = proposed
    .slice(0, mostLookedAt)
    .filter((trial) => decisionBar({ personId, ...handsOf(trial, bakery) }) === null)
  return fewOfAll(
    theirs.map((trial) => trialRow(trial, trial.proposedAt)),
    proposed.length > mostLookedAt,
  )
}
