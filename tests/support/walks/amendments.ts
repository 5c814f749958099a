import { getResult } from '../../../lib/kitchen/amendments/get-result'
import { decideAmendment } from '../../../lib/kitchen/amendments/decide-amendment'
import { proposeAmendment } from '../../../lib/kitchen/amendments/propose-amendment'
import { signSlip } from '../../../lib/kitchen/amendments/sign-slip'
import { proposeNotCounting } from '../../../lib/kitchen/amendments/propose-not-counting'
import { callerOf, valueOf, type TestPerson } from '../bakery'
import { plantTrial, type PlantedDough, type PlantedTrial } from '../planted-trial'
import type { ActionWalk, WalkContext } from '../rights-walk'

const file = 'app/(desk)/trials/[trialId]/result/amendments/actions.ts'
const pageOf = (trialId: string) => `/trials/${trialId}/result/amendments`
const asSelf = (person: TestPerson) => callerOf(person.sessionSecret, new Date())

/** Three mixing days of control and arm, so that there is a result also without one dough. */
const doughs: readonly PlantedDough[] = [0, 1, 2, 3, 4, 5].map((i) => ({
  arm: i % 2,
  day: 1 + Math.floor(i / 2),
  loaves: [0, 1].map((loaf) => ({
    massG: 400,
    volumesMl: [1600 + 130 * (i % 2) + 7 * i + 5 * loaf, 1604 + 130 * (i % 2) + 7 * i + 5 * loaf] as const,
  })),
}))

/** A closed trial with an invented result. */
export function walkClosed({ bakery }: WalkContext): Promise<PlantedTrial> {
  return plantTrial(bakery, { state: 'closed', mixingDays: 3, doughs, at: new Date() })
}

/** A closed trial of which a shift baker said that a dough should not count. */
async function proposed(context: WalkContext) {
  const { trialId, batchIds } = await walkClosed(context)
  const { amendmentId } = valueOf(
    await proposeNotCounting.call(asSelf(context.bakery.early), {
      trialId,
      doughId: batchIds.get('1-1'),
      reason: 'No salt in it.',
    }),
  )
  const { amendments } = valueOf(await getResult.call(asSelf(context.bakery.early), { trialId })).after!
  return { trialId, amendmentId, hash: amendments[0]!.hash }
}

/** Amends a closed trial: one that was accepted, for which one of two has signed, and one that waits. */
export async function walkAmended({ bakery }: WalkContext, trialId: string): Promise<string> {
  const [early, head] = [asSelf(bakery.early), asSelf(bakery.head)]
  const seen = async () => valueOf(await getResult.call(head, { trialId })).after!
  const { doughs: there, measures } = await seen()
  const asked = { trialId, doughId: there[0]!.id, measureId: measures.find(({ code }) => code === 'loaf-mass')!.id }
  const reading = { ...asked, what: 'another', piece: 1, repeat: 1, value: '405.5', reason: 'Walked' }
  const { amendmentId } = valueOf(await proposeAmendment.call(early, reading))
  const { hash } = (await seen()).amendments[0]!
  valueOf(await decideAmendment.call(head, { amendmentId, seenHash: hash, accept: true, note: 'Walked' }))
  const { amendedHash } = (await seen()).slip!
  valueOf(await signSlip.call(head, { trialId, amendedHash, reason: 'Walked' }))
  valueOf(await proposeNotCounting.call(early, { trialId, doughId: there[1]!.id, reason: 'Walked' }))
  return trialId
}

const isThere = async ({ look }: WalkContext, from: string, trialId: string) =>
  (await look.query(`SELECT 1 FROM ${from} WHERE trial_id = $1`, [trialId])).rows.length === 1

export const amendmentsActions: readonly ActionWalk[] = [
  {
    action: `${file}#propose`,
    command: 'amendments.propose-amendment',
    right: 'propose-amendment',
    async aim(context) {
      const { trialId, batchIds, measureIds } = await walkClosed(context)
      return {
        page: pageOf(trialId),
        bound: [trialId, 'en-GB'],
        fields: {
          what: 'another',
          doughId: batchIds.get('1-1')!,
          measureId: measureIds.get('loaf-mass')!,
          piece: '1',
          repeat: '1',
          value: '405.5',
          reason: 'Walked',
        },
        happened: () => isThere(context, 'amendment', trialId),
      }
    },
  },
  {
    action: `${file}#proposeOut`,
    command: 'amendments.propose-not-counting',
    right: 'propose-amendment',
    async aim(context) {
      const { trialId, batchIds } = await walkClosed(context)
      return {
        page: pageOf(trialId),
        bound: [trialId],
        fields: { doughId: batchIds.get('1-1')!, reason: 'Walked' },
        happened: () => isThere(context, 'amendment', trialId),
      }
    },
  },
  {
    action: `${file}#decide`,
    command: 'amendments.decide-amendment',
    right: 'decide-amendment',
    // There is a head baker and an owner, so a baker is no witness.
    narrowedFor: ['shift_baker'],
    async aim(context) {
      const { trialId, amendmentId, hash } = await proposed(context)
      return {
        page: pageOf(trialId),
        bound: [amendmentId, hash],
        fields: { accept: 'yes', note: 'Walked' },
        happened: () =>
          isThere(
            context,
            'amendment JOIN amendment_verdict ON amendment_verdict.amendment_id = amendment.id',
            trialId,
          ),
      }
    },
  },
  {
    action: `${file}#sign`,
    command: 'amendments.sign-slip',
    right: 'decide-amendment',
    narrowedFor: ['shift_baker'],
    async aim(context) {
      const { trialId, amendmentId, hash } = await proposed(context)
      const head = asSelf(context.bakery.head)
      valueOf(await decideAmendment.call(head, { amendmentId, seenHash: hash, accept: true, note: '' }))
      const after = valueOf(await getResult.call(head, { trialId })).after
      return {
        page: pageOf(trialId),
        bound: [trialId, after?.slip?.amendedHash],
        fields: { reason: 'Walked' },
        happened: () => isThere(context, 'slip_signature', trialId),
      }
    },
  },
]
