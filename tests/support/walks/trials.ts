import { moveBatch } from '../../../lib/kitchen/shifts/move-batch'
import { decidePlan } from '../../../lib/kitchen/trials/decide-plan'
import { draftTrial } from '../../../lib/kitchen/trials/draft-trial'
import { proposePlan } from '../../../lib/kitchen/trials/propose-plan'
import { callerOf, valueOf, type TestPerson } from '../bakery'
import type { ActionWalk, PageWalk, WalkContext } from '../rights-walk'
import { makeTrialStores, trialContentOf, type TrialStores } from '../trials'

const units = { locale: 'en-GB', massUnits: 'metric', temperatureUnits: 'celsius' }

/** Signed in now, as the browser is, and not at the fixed time of other tests. */
const as = (person: TestPerson) => callerOf(person.sessionSecret, new Date(), person.password)

/** Proposed by the second shift baker, who is no walker, so that each walker is a second person. */
async function plantDraft({ bakery }: WalkContext) {
  const stores = await makeTrialStores(bakery, new Date())
  const { trialId } = valueOf(await draftTrial.call(as(bakery.late), { content: trialContentOf(stores) }))
  return { stores, trialId }
}

async function plantProposed(context: WalkContext, by = context.bakery.late) {
  const { trialId } = await plantDraft(context)
  return valueOf(await proposePlan.call(as(by), { trialId, seenRevision: 1 }))
}

async function plantApproved(context: WalkContext) {
  const proposed = await plantProposed(context)
  const { trialId, planHash, revision } = proposed
  valueOf(
    await decidePlan.call(as(context.bakery.owner), {
      trialId,
      seenRevision: revision,
      planHash,
      verdict: 'approved',
      note: '',
    }),
  )
  return { trialId, revision: revision + 1 }
}

const count = async ({ look }: WalkContext, sql: string, values: unknown[]) =>
  Number((await look.query<{ n: string }>(sql, values)).rows[0]?.n)
const isInState = (context: WalkContext, trialId: string, state: string) => async () =>
  (await count(context, 'SELECT count(*) n FROM trial WHERE id = $1 AND state = $2::trial_state', [trialId, state])) ===
  1
const isAsked = (context: WalkContext) => async () =>
  (await count(context, `SELECT count(*) n FROM trial WHERE bakery_id = $1 AND question = 'Walked?'`, [
    context.bakery.bakeryId,
  ])) === 1

const typed = (stores: TrialStores): Record<string, string> => ({
  'content.kind': 'look_only',
  'content.question': 'Walked?',
  'content.formulaId': stores.formulaId,
  'content.measureId': stores.measureIds['specific-volume'] ?? '',
  'content.margin': '5',
  'content.marginUnit': 'pct',
  'content.confidencePct': '95',
  'content.mixingDays': '1',
  'content.batchesPerArm': '1',
  'content.piecesPerBatch': '4',
  'content.heldTotals.water': 'on',
  'content.scaleId': '',
  'content.mixerId': '',
  'content.flourTempC': '20',
  'content.roomTempC': '22',
  'content.tapTempC': '12',
  'content.note': '',
  'content.arms.0.name': 'malt',
  'content.arms.0.how': 'balanced',
  'content.arms.0.doses.0.ingredientId': stores.ids.malt,
  'content.arms.0.doses.0.value': '0.6',
  'content.arms.0.doses.0.basis': 'pct_flour',
  'content.arms.0.doses.0.doseOf': 'product',
})

export const trialsActions: readonly ActionWalk[] = [
  {
    action: 'app/(desk)/trials/new/actions.ts#draft',
    command: 'trials.draft-trial',
    right: 'propose-trial',
    async aim(context) {
      const stores = await makeTrialStores(context.bakery, new Date())
      return { page: '/trials/new', bound: [units], fields: typed(stores), happened: isAsked(context) }
    },
  },
  {
    action: 'app/(desk)/trials/[trialId]/edit/actions.ts#changeDraft',
    command: 'trials.change-draft-trial',
    right: 'propose-trial',
    async aim(context) {
      const { stores, trialId } = await plantDraft(context)
      return {
        page: `/trials/${trialId}/edit`,
        bound: [trialId, 1, units],
        fields: typed(stores),
        happened: isAsked(context),
      }
    },
  },
  {
    action: 'app/(desk)/trials/[trialId]/actions.ts#chooseForLines',
    command: 'trials.choose-lines',
    right: 'propose-trial',
    async aim(context) {
      const { stores, trialId } = await plantDraft(context)
      const happened = async () =>
        (await count(
          context,
          'SELECT count(*) n FROM trial_line WHERE trial_id = $1 AND may_move AND scale_id IS NULL',
          [trialId],
        )) === 1
      const place = { stageKind: 'final_dough', ingredientId: stores.ids.salt }
      return {
        page: `/trials/${trialId}`,
        bound: [trialId, 1, [place]],
        fields: { 'lines.0.mayMove': 'moves', 'lines.0.scaleId': '' },
        happened,
      }
    },
  },
  {
    action: 'app/(desk)/trials/[trialId]/actions.ts#propose',
    command: 'trials.propose-plan',
    right: 'propose-trial',
    async aim(context) {
      const { trialId } = await plantDraft(context)
      return {
        page: `/trials/${trialId}`,
        bound: [trialId, 1],
        fields: {},
        happened: isInState(context, trialId, 'proposed'),
      }
    },
  },
  {
    action: 'app/(desk)/trials/[trialId]/actions.ts#decide',
    command: 'trials.decide-plan',
    right: 'approve-plan',
    async aim(context) {
      const { trialId, planHash, revision } = await plantProposed(context)
      const fields = { verdict: 'approved', note: '', password: '{own}' }
      return {
        page: `/trials/${trialId}`,
        bound: [{ trialId, planHash, seenRevision: revision }],
        fields,
        happened: isInState(context, trialId, 'approved'),
      }
    },
  },
  {
    action: 'app/(desk)/trials/[trialId]/actions.ts#withdraw',
    command: 'trials.withdraw-plan',
    right: 'propose-trial',
    // Only who proposed it may: here the shift baker who walks.
    narrowedFor: ['owner', 'head_baker'],
    async aim(context) {
      const { trialId, revision } = await plantProposed(context, context.bakery.early)
      return {
        page: `/trials/${trialId}`,
        bound: [trialId, revision],
        fields: {},
        happened: isInState(context, trialId, 'draft'),
      }
    },
  },
  {
    action: 'app/(desk)/trials/[trialId]/actions.ts#dateDays',
    command: 'trials.date-mixing-days',
    right: 'approve-plan',
    async aim(context) {
      const { trialId } = await plantApproved(context)
      const happened = async () =>
        (await count(
          context,
          `SELECT count(*) n FROM mixing_day WHERE trial_id = $1 AND number = 1 AND day = '2030-05-04'`,
          [trialId],
        )) === 1
      return {
        page: `/trials/${trialId}`,
        bound: [trialId, [{ number: 1, seen: null }]],
        fields: { 'days.0.day': '2030-05-04' },
        happened,
      }
    },
  },
  {
    action: 'app/(desk)/trials/[trialId]/actions.ts#addWholeDay',
    command: 'repairs.add-day',
    right: 'approve-plan',
    async aim(context) {
      const { trialId } = await plantApproved(context)
      const { rows } = await context.look.query<{ id: string }>(
        'SELECT b.id FROM batch b JOIN mixing_day d ON d.id = b.mixing_day_id WHERE b.trial_id = $1 AND d.number = 1',
        [trialId],
      )
      valueOf(
        await moveBatch.call(as(context.bakery.late), {
          batchId: rows[0]!.id,
          seenRevision: 1,
          to: 'not_baked',
          why: 'walked',
        }),
      )
      return {
        page: `/trials/${trialId}`,
        bound: [trialId, 1],
        fields: {},
        happened: async () =>
          (await count(context, `SELECT count(*) n FROM repair WHERE trial_id = $1 AND kind = 'add_day'`, [
            trialId,
          ])) === 1,
      }
    },
  },
  {
    action: 'app/(desk)/trials/[trialId]/actions.ts#stop',
    command: 'trials.stop-trial',
    right: 'approve-plan',
    async aim(context) {
      const { trialId, revision } = await plantApproved(context)
      return {
        page: `/trials/${trialId}`,
        bound: [trialId, revision],
        fields: { reason: 'Walked.' },
        happened: isInState(context, trialId, 'stopped'),
      }
    },
  },
  {
    action: 'app/(desk)/trials/[trialId]/weigh-out/actions.ts#open',
    command: 'trials.open-key',
    right: 'read-work',
    async aim(context) {
      const { trialId, planHash } = await plantProposed(context)
      return {
        page: `/trials/${trialId}/weigh-out`,
        bound: [{ trialId, planHash }],
        fields: {},
        happened: async () =>
          (await count(context, 'SELECT count(*) n FROM opened_key WHERE trial_id = $1', [trialId])) === 1,
      }
    },
  },
]

export const trialsPages: readonly PageWalk[] = [
  {
    route: '/trials',
    queries: ['trials.list-trials', 'desk.list-waiting'],
    right: 'read-work',
    address: () => '/trials',
  },
  { route: '/trials/new', queries: ['trials.get-trial'], right: 'propose-trial', address: () => '/trials/new' },
  {
    route: '/trials/[trialId]',
    queries: ['trials.get-plan', 'repairs.get-repairs'],
    right: 'read-work',
    address: async (context) => `/trials/${(await plantProposed(context)).trialId}`,
    named: true,
  },
  {
    route: '/trials/[trialId]/edit',
    queries: ['trials.get-trial'],
    right: 'propose-trial',
    address: async (context) => `/trials/${(await plantDraft(context)).trialId}/edit`,
    named: true,
  },
  {
    route: '/trials/[trialId]/weigh-out',
    queries: ['trials.get-weigh-out'],
    right: 'read-work',
    address: async (context) => `/trials/${(await plantApproved(context)).trialId}/weigh-out`,
    named: true,
  },
]
