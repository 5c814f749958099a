import { draftChange } from '../../../lib/kitchen/decisions/draft-change'
import { callerOf, valueOf } from '../bakery'
import { makeEndedTrial } from '../ended-trial'
import type { ActionWalk, PageWalk, WalkContext } from '../rights-walk'

const plantEnded = ({ bakery }: WalkContext) => makeEndedTrial(bakery, { now: new Date() })

/** A change to the first test dough, drafted by the owner. */
async function plantDecision(context: WalkContext) {
  const { trialId, revision, armIds } = await plantEnded(context)
  const owner = callerOf(context.bakery.owner.sessionSecret, new Date())
  return valueOf(
    await draftChange.call(owner, { trialId, seenRevision: revision, armId: armIds[1], reason: 'Walked to.' }),
  )
}

const isDecided =
  ({ look }: WalkContext, trialId: string, outcome: string) =>
  async () =>
    (
      await look.query(`SELECT 1 FROM decision WHERE trial_id = $1 AND outcome = $2::decision_outcome`, [
        trialId,
        outcome,
      ])
    ).rowCount === 1

const decide = 'app/(desk)/trials/[trialId]/decide/actions.ts'

export const decisionsActions: readonly ActionWalk[] = [
  {
    action: `${decide}#change`,
    command: 'decisions.draft-change',
    right: 'draft-formula',
    async aim(context) {
      const { trialId, revision, armIds } = await plantEnded(context)
      return {
        page: `/trials/${trialId}/decide`,
        bound: [trialId, revision],
        fields: { armId: armIds[1]!, reason: 'Walked.' },
        happened: isDecided(context, trialId, 'change'),
      }
    },
  },
  {
    action: `${decide}#keep`,
    command: 'decisions.keep-formula',
    right: 'sign-off-formula',
    async aim(context) {
      const { trialId, revision } = await plantEnded(context)
      return {
        page: `/trials/${trialId}/decide`,
        bound: [trialId, revision],
        fields: { reason: 'Walked.' },
        happened: isDecided(context, trialId, 'keep'),
      }
    },
  },
  {
    action: 'app/(desk)/decisions/[decisionId]/actions.ts#takeItBack',
    command: 'decisions.take-back',
    right: 'sign-off-formula',
    async aim(context) {
      const { decisionId } = await plantDecision(context)
      return {
        page: `/decisions/${decisionId}`,
        bound: [decisionId, 1],
        fields: { reason: 'Walked.' },
        happened: async () =>
          (
            await context.look.query(`SELECT 1 FROM decision WHERE id = $1 AND taken_back_why = 'Walked.'`, [
              decisionId,
            ])
          ).rowCount === 1,
      }
    },
  },
]

export const decisionsPages: readonly PageWalk[] = [
  {
    route: '/decisions',
    queries: ['decisions.list-decisions'],
    right: 'read-work',
    async address(context) {
      await plantDecision(context)
      return '/decisions'
    },
  },
  {
    route: '/decisions/[decisionId]',
    queries: ['decisions.get-decision'],
    right: 'read-work',
    address: async (context) => `/decisions/${(await plantDecision(context)).decisionId}`,
    named: true,
  },
  {
    route: '/trials/[trialId]/decide',
    queries: ['decisions.get-choices', 'amendments.get-result'],
    right: 'draft-formula',
    address: async (context) => `/trials/${(await plantEnded(context)).trialId}/decide`,
    named: true,
  },
]
