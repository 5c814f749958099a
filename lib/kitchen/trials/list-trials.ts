import 'server-only'
import { z } from 'zod'
import { levelOf } from '../../auth/rights'
import { query } from '../query'
import { opensOn, standingOf, type Standing } from './rules'

/** The bakery's trials by where they stand, the newest first. */
export const listTrials = query({
  name: 'trials.list-trials',
  input: z.strictObject({}),
  right: 'read-work',
  async run({ db, actor }) {
    const rows = await db.trial.findMany({
      where: { bakeryId: actor.bakeryId },
      select: {
        id: true,
        number: true,
        kind: true,
        state: true,
        question: true,
        createdAt: true,
        proposedAt: true,
        closedAt: true,
        mixingDays: true,
        batchesPerArm: true,
        formula: { select: { name: true } },
        proposedBy: { select: { id: true, name: true } },
        decisions: { select: { verdict: true }, orderBy: { at: 'desc' }, take: 1 },
        outcomes: { where: { takenBackAt: null }, select: { id: true, outcome: true, version: { select: { signedAt: true } } } },
        _count: { select: { arms: true } },
      },
      orderBy: { number: 'desc' },
      take: 1000,
    })
    const trials = rows.map(({ _count, mixingDays, batchesPerArm, formula, proposedBy, decisions, outcomes, state, ...trial }) => ({
      ...trial,
      standing: standingOf({ state, lastVerdict: decisions[0]?.verdict ?? null }),
      opensOn: opensOn(state),
      formula: formula.name,
      decision: outcomes[0] ? { id: outcomes[0].id, outcome: outcomes[0].version?.signedAt ? ('changed' as const) : outcomes[0].outcome } : null,
      proposedBy: proposedBy.name,
      isMine: proposedBy.id === actor.personId,
      doughs: mixingDays * batchesPerArm * _count.arms,
    }))
    const standing = (...standings: Standing[]) => trials.filter((trial) => standings.includes(trial.standing))
    return {
      waiting: standing('proposed'),
      baking: standing('approved', 'baking'),
      // What was sent back waits for its writer, so it comes before what nobody has asked for yet.
      drafts: [...standing('sent_back'), ...standing('draft')],
      past: standing('closed', 'stopped', 'declined'),
      mayPropose: levelOf(actor.role, 'propose-trial') === 'yes',
    }
  },
})
