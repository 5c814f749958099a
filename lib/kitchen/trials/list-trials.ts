import 'server-only'
import { z } from 'zod'
import { levelOf } from '../../auth/rights'
import type { TrialState } from '../../db/generated/enums'
import { after } from '../after.input'
import { keyParts } from '../page-cursor'
import { query } from '../query'
import { readPage } from '../read-page'
import { opensOn, standingOf } from './rules'

/** The bakery's trials by where they stand, a page of each, the newest first. */
export const listTrials = query({
  name: 'trials.list-trials',
  input: z.strictObject({ after }),
  right: 'read-work',
  async run({ db, actor, input }) {
    const { bakeryId } = actor
    const sentBack = { state: 'draft', decisions: { some: {} } } as const
    const pageOf = async (
      list: string,
      where: typeof sentBack | { state: 'draft'; decisions: { none: object } } | { state: { in: TrialState[] } },
    ) => {
      const page = await readPage({
        bakeryId,
        list: `trials.${list}`,
        after: input.after,
        count: () => db.trial.count({ where: { bakeryId, ...where } }),
        key: z.tuple([keyParts.number]),
        read: (beyond, take) =>
          db.trial.findMany({
            where: { bakeryId, ...where, ...(beyond && { number: { lt: beyond[0] } }) },
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
              outcomes: {
                where: { takenBackAt: null },
                select: { id: true, outcome: true, version: { select: { signedAt: true } } },
              },
              _count: { select: { arms: true } },
            },
            orderBy: { number: 'desc' },
            take,
          }),
        keyOf: ({ number }) => [number],
      })
      const rows = page.rows.map(
        ({ _count, mixingDays, batchesPerArm, formula, proposedBy, decisions, outcomes, state, ...trial }) => ({
          ...trial,
          standing: standingOf({ state, lastVerdict: decisions[0]?.verdict ?? null }),
          opensOn: opensOn(state),
          formula: formula.name,
          decision: outcomes[0]
            ? {
                id: outcomes[0].id,
                outcome: outcomes[0].version?.signedAt ? ('changed' as const) : outcomes[0].outcome,
              }
            : null,
          proposedBy: proposedBy.name,
          isMine: proposedBy.id === actor.personId,
          doughs: mixingDays * batchesPerArm * _count.arms,
        }),
      )
      return { ...page, rows }
    }
    const inStates = (list: string, ...wanted: TrialState[]) => pageOf(list, { state: { in: wanted } })
    const [waiting, baking, back, drafts, past] = await Promise.all([
      inStates('waiting', 'proposed'),
      inStates('baking', 'approved', 'baking'),
      // A draft whose plan was ever decided on was sent back: any other decision makes it more, or less, than a draft.
      pageOf('sent-back', sentBack),
      pageOf('drafts', { state: 'draft', decisions: { none: {} } }),
      inStates('past', 'closed', 'stopped', 'declined'),
    ])
    return { waiting, baking, sentBack: back, drafts, past, mayPropose: levelOf(actor, 'propose-trial') === 'yes' }
  },
})
