import 'server-only'
import type { DeskActor } from '../../auth/actor'
import type { Db } from '../../db/client'
import type { Prisma } from '../../db/generated/client'
import { unfinishedStates } from '../batches/rules'
import { endedStates } from '../trials/rules'
import { fewOf } from './few-of'
import { trialColumns, trialRow } from './trial-row'

/** Somebody's own plans that were sent back, the one that came back first at the top. */
export function plansSentBack(db: Db, { bakeryId, personId }: DeskActor) {
  // A draft whose plan was ever decided on was sent back: any other decision makes it more, or less, than a draft.
  const where = {
    bakeryId,
    state: 'draft',
    proposedById: personId,
    decisions: { some: {} },
  } satisfies Prisma.TrialWhereInput
  return fewOf(
    async (take) => {
      const trials = await db.trial.findMany({
        where,
        select: { ...trialColumns, decisions: { select: { at: true }, orderBy: { at: 'desc' }, take: 1 } },
        orderBy: { number: 'asc' },
        take,
      })
      return trials.map((trial) => trialRow(trial, trial.decisions[0]?.at ?? null))
    },
    () => db.trial.count({ where }),
  )
}

/** Trials of which every dough is measured or lost, so that their baking can be ended. */
export function trialsToClose(db: Db, { bakeryId }: DeskActor) {
  const where = {
    bakeryId,
    state: 'baking',
    batches: { none: { kind: 'dough', state: { in: unfinishedStates } } },
  } satisfies Prisma.TrialWhereInput
  return fewOf(
    async (take) => {
      const trials = await db.trial.findMany({
        where,
        select: {
          ...trialColumns,
          batches: { select: { doneAt: true }, where: { doneAt: { not: null } }, orderBy: { doneAt: 'desc' }, take: 1 },
        },
        orderBy: { number: 'asc' },
        take,
      })
      return trials.map((trial) => trialRow(trial, trial.batches[0]?.doneAt ?? trial.proposedAt))
    },
    () => db.trial.count({ where }),
  )
}

/** Trials that were baked and are over, and that nobody has decided on, the one that ended first at the top. */
export function trialsToDecide(db: Db, { bakeryId }: DeskActor) {
  const where = {
    bakeryId,
    state: { in: endedStates },
    batches: { some: { begunAt: { not: null } } },
    outcomes: { none: { takenBackAt: null } },
  } satisfies Prisma.TrialWhereInput
  return fewOf(
    async (take) => {
      const trials = await db.trial.findMany({
        where,
        select: trialColumns,
        orderBy: [{ closedAt: 'asc' }, { number: 'asc' }],
        take,
      })
      return trials.map((trial) => trialRow(trial, trial.closedAt))
    },
    () => db.trial.count({ where }),
  )
}
