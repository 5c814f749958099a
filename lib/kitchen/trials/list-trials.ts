import 'server-only'
import { z } from 'zod'
import { levelOf } from '../../auth/rights'
import { query } from '../query'

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
        outcomes: { where: { takenBackAt: null }, select: { id: true, outcome: true, version: { select: { signedAt: true } } } },
        _count: { select: { arms: true } },
      },
      orderBy: { number: 'desc' },
      take: 1000,
    })
    const trials = rows.map(({ _count, mixingDays, batchesPerArm, formula, proposedBy, outcomes, ...trial }) => ({
      ...trial,
      formula: formula.name,
      decision: outcomes[0] ? { id: outcomes[0].id, outcome: outcomes[0].version?.signedAt ? ('changed' as const) : outcomes[0].outcome } : null,
      proposedBy: proposedBy.name,
      isMine: proposedBy.id === actor.personId,
      doughs: mixingDays * batchesPerArm * _count.arms,
    }))
    const inState = (...states: (typeof trials)[number]['state'][]) => trials.filter(({ state }) => states.includes(state))
    return {
      waiting: inState('proposed'),
      baking: inState('approved', 'baking'),
      drafts: inState('draft'),
      past: inState('closed', 'stopped', 'declined'),
      mayPropose: levelOf(actor.role, 'propose-trial') === 'yes',
    }
  },
})
