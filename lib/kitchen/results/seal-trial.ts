import 'server-only'
import type { DeskActor } from '../../auth/actor'
import type { Tx } from '../../db/client'
import { textOfClosing } from '../../documents/closing/text-of-closing'
import { Refusal } from '../refusal'
import { firstNotAsPlanned } from '../repairs/first-not-as-planned'
import { planOfText } from '../trials/plan-of-text'
import type { Plan } from '../trials/plan-types'
import { contentOfTrial, type TrialContent } from './content-of-trial'
import { sealsOf } from './judge-readings'
import { declaredOf, readTrial } from './load-evidence'

/**
 * Keeps everything that was declared, baked and read of a trial as it is at this moment, for its result to rest on. The
 * trial is held already.
 * @returns hash of what was kept
 * @throws Refusal 'not-as-planned' where a dough is not the one that the approved plan drew for its code, or a
 * repair made beside it
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
  if (plan?.planText && plan.planHash)
    await mustBeAsPlanned(tx, { bakeryId, trialId }, content, planOfText(plan.planText, plan.planHash))
  const { state: _, ...declared } = declaredOf(trial)
  const { text, hash } = textOfClosing({
    bakery: bakeryId,
    trial: { id: trialId, number: trial.number, planHash: trial.planHash },
    closed: { ...closed, at: closed.at.toISOString(), by: { id: actor.personId, name: actor.name } },
    declared,
    ...content,
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

/** Nobody can have swapped doughs under their codes, or added one that neither the plan nor a repair has made. */
async function mustBeAsPlanned(
  tx: Tx,
  { bakeryId, trialId }: { bakeryId: string; trialId: string },
  { doughs }: TrialContent,
  plan: Pick<Plan, 'order' | 'arms'>,
): Promise<void> {
  const code = firstNotAsPlanned(doughs, plan)
  if (code !== null) throw new Refusal('not-as-planned', { code })
  const made = await tx.batch.count({
    where: {
      bakeryId,
      trialId,
      OR: [{ madeBy: { some: { kind: 'bake_again' } } }, { mixingDay: { madeBy: { some: { kind: 'add_day' } } } }],
    },
  })
  const planned = new Set(plan.order?.batches.map((batch) => batch.code))
  const beside = doughs.filter((dough) => !planned.has(dough.code))
  const [stray] = beside
  if (stray && beside.length !== made) throw new Refusal('not-as-planned', { code: stray.code })
}
