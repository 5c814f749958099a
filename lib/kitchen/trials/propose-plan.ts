import 'server-only'
import { randomUUID } from 'node:crypto'
import { v7 as uuid } from 'uuid'
import { db, type Db, type Tx } from '../../db/client'
import { textOfPlan } from '../../documents/plan/text-of-plan'
import { command } from '../command'
import { hashOfFacts } from '../heavy/hash-of-facts'
import { Refusal } from '../refusal'
import { staleRefusal } from '../stale'
import { drawUpOrRefuse } from './draw-up-or-refuse'
import { loadPlanFacts } from './load-plan-facts'
import { lockTrial } from './lock-trial'
import { mustBePlannable } from './must-be-plannable'
import type { Plan, PlanFacts } from './plan-types'
import { proposePlanInput } from './propose-plan.input'
import { readContent } from './read-content'
import { removePlan } from './write-content'

/**
 * Draws up the plan of a draft and hands it to whoever decides: masses, order from a new seed, codes, all in one text
 * with its hash. The control is the version in production at this moment. Who proposes is who cannot decide.
 * It is drawn up before the transaction, and kept only if everything that it rests on is then still the same.
 * Refuses: not-found, stale, plan-not-possible, took-too-long, not-worked-out; faults of the draft that came about since it was written.
 */
export const proposePlan = command({
  name: 'trials.propose-plan',
  input: proposePlanInput,
  right: 'propose-trial',
  async prepare({ actor: { bakeryId }, now, input: { trialId, seenRevision } }) {
    const trial = await db().trial.findUnique({
      where: { bakeryId_id: { bakeryId, id: trialId } },
      select: { state: true, revision: true },
    })
    // What is not there, or not as it was seen, is refused in its turn, with the words for it.
    if (trial?.state !== 'draft' || trial.revision !== seenRevision) return null
    const facts = await factsToPropose(db(), bakeryId, trialId, now)
    const seed = randomUUID()
    return { facts: hashOfFacts(facts), seed, plan: await drawUpOrRefuse(facts, seed) }
  },
  async run({ tx, actor, now, input: { trialId, seenRevision }, prepared }) {
    const { bakeryId } = actor
    const trial = await lockTrial(tx, bakeryId, trialId)
    if (trial.state !== 'draft' || trial.revision !== seenRevision) throw await staleRefusal(tx, actor, trialId)
    const facts = await factsToPropose(tx, bakeryId, trialId, now)
    if (prepared?.facts !== hashOfFacts(facts)) throw new Refusal('stale-moved-on')
    const { seed, plan } = prepared
    const { text, hash } = textOfPlan(plan)
    await tx.trial.updateMany({
      where: { bakeryId, id: trialId },
      data: { controlVersionId: plan.declared.controlVersion.id },
    })
    await writePlan(tx, bakeryId, trialId, plan)
    const { count } = await tx.trial.updateMany({
      where: { bakeryId, id: trialId, state: 'draft', revision: seenRevision },
      data: {
        state: 'proposed',
        seed,
        planText: text,
        planHash: hash,
        proposedById: actor.personId,
        proposedAt: now,
        revision: { increment: 1 },
      },
    })
    if (count !== 1) throw await staleRefusal(tx, actor, trialId)
    return {
      value: { trialId, planHash: hash, revision: seenRevision + 1 },
      audit: { target: trialId, before: 'draft', after: { state: 'proposed', plan: hash, doughs: plan.size.doughs } },
    }
  },
})

/** What a draft's plan is drawn up from, against the version in production. @throws Refusal */
async function factsToPropose(from: Db | Tx, bakeryId: string, trialId: string, now: Date): Promise<PlanFacts> {
  const content = await readContent(from, bakeryId, trialId)
  if (!content) throw new Refusal('not-found')
  const { controlVersionId } = await mustBePlannable(from, bakeryId, content, now, '')
  const facts = await loadPlanFacts(from, bakeryId, trialId, controlVersionId)
  if (!facts) throw new Refusal('not-found')
  return facts
}

async function writePlan(tx: Tx, bakeryId: string, trialId: string, plan: Plan): Promise<void> {
  await removePlan(tx, bakeryId, trialId)
  const arms = await tx.arm.findMany({ where: { bakeryId, trialId }, select: { id: true, position: true } })
  const armIds = new Map(arms.map(({ id, position }) => [position, id]))
  const armIdOf = (position: number) => {
    const id = armIds.get(position)
    if (id === undefined) throw new Error(`trial ${trialId} has no arm ${position}`)
    return id
  }
  await tx.armLine.createMany({
    data: plan.arms.flatMap((arm) =>
      arm.lines.map((line, position) => ({
        bakeryId,
        id: uuid(),
        armId: armIdOf(arm.position),
        position,
        stageId: line.stageId,
        ingredientId: line.ingredientId,
        controlMassG: line.controlG,
        massG: line.exactG,
        weighedG: line.weighedG,
      })),
    ),
  })
  const days = Array.from({ length: plan.declared.mixingDays }, (_, i) => ({
    bakeryId,
    id: uuid(),
    trialId,
    number: i + 1,
  }))
  await tx.mixingDay.createMany({ data: days })
  await tx.batch.createMany({
    data: (plan.order?.batches ?? []).map((batch) => ({
      bakeryId,
      id: uuid(),
      trialId,
      kind: 'dough',
      armId: armIdOf(batch.arm),
      mixingDayId: days[batch.day - 1]?.id ?? '',
      plannedOrder: batch.place,
      code: batch.code,
      cleanDownBefore: batch.cleanDownOf.length > 0,
      state: 'waiting',
      revision: 1,
    })),
  })
}
