import 'server-only'
import type { DeskActor } from '../../auth/actor'
import type { Tx } from '../../db/client'
import { textOfClosing } from '../../documents/closing/text-of-closing'
import { Refusal } from '../refusal'
import { planOfText } from '../trials/plan-of-text'
import { contentOfTrial, type TrialContent } from './content-of-trial'
import { sealsOf } from './judge-readings'
import { declaredOf, readTrial } from './load-evidence'

/**
 * Keeps everything that was declared, baked and read of a trial as it is at this moment, for its result to rest on. The
 * trial is held already.
 * @returns hash of what was kept
 * @throws Refusal 'not-as-planned' where a dough is not the one that the approved plan drew for its code
 */
export async function sealTrial(
  tx: Tx,
  actor: Pick<DeskActor, 'bakeryId' | 'personId' | 'name'>,
  trialId: string,
  closed: { at: Date; state: 'closed' | 'stopped'; why: string | null },
): Promise<string> {
  const { bakeryId } = actor
  const [trial, plan, content] = await Promise.all([
    readTrial(tx, bakeryId, trialId),
    tx.trial.findUnique({
      where: { bakeryId_id: { bakeryId, id: trialId } },
      select: { planText: true, planHash: true },
    }),
    contentOfTrial(tx, bakeryId, trialId),
  ])
  if (!trial) throw new Refusal('not-found')
  if (plan?.planText && plan.planHash) mustBeAsPlanned(content, planOfText(plan.planText, plan.planHash).order)
  const { state: _, ...declared } = declaredOf(trial)
  const { text, hash } = textOfClosing({
    bakery: bakeryId,
    trial: { id: trialId, number: trial.number, planHash: trial.planHash },
    closed: { ...closed, at: closed.at.toISOString(), by: { id: actor.personId, name: actor.name } },
    declared,
    ...content,
    repairs: [],
  })
  await tx.closing.create({
    data: {
      bakeryId,
      trialId,
      text,
      hash,
      rowsSeal: (await sealsOf(tx, bakeryId, trialId)).rowsNow,
      closedById: actor.personId,
      at: closed.at,
    },
  })
  return hash
}

type Order = { batches: readonly { code: string; day: number; place: number; arm: number }[] } | null

/** Nobody can have swapped doughs under their codes, or added one that was never drawn. */
function mustBeAsPlanned({ doughs }: TrialContent, order: Order): void {
  const drawn = new Map(order?.batches.map((batch) => [batch.code, batch]))
  for (const { code, arm, day, plannedOrder } of doughs) {
    const planned = drawn.get(code)
    if (planned?.arm !== arm || planned.day !== day || planned.place !== plannedOrder)
      throw new Refusal('not-as-planned', { code })
    drawn.delete(code)
  }
  for (const code of drawn.keys()) throw new Refusal('not-as-planned', { code })
}
