import 'server-only'
import { z } from 'zod'
import { levelOf } from '../../auth/rights'
import { dayInZone } from '../day-in-zone'
import { dayOfDate } from '../day-of-date'
import { listKnowers } from '../key/list-knowers'
import { query } from '../query'
import { Refusal } from '../refusal'
import { costsOfPlan } from './costs-of-plan'
import { drawUpOrRefuse } from './draw-up-or-refuse'
import { deciders, handsOf } from './hands-of-plan'
import { linesToChoose } from './lines-to-choose'
import { linesToWeigh } from './lines-to-weigh'
import { loadPlanFacts } from './load-plan-facts'
import type { Plan, PlanBatch } from './plan-types'
import { planOfText } from './plan-of-text'
import { decisionBar, handIn, isFrozen, isKeyOpen, isOpen, standingOf, withdrawalBar } from './rules'

/**
 * The plan of a trial on one page: what is declared, each dough, the order, what to mind, what became of it. Of a
 * draft it is what would be proposed now, without an order; from then on it is the very text that was proposed, but
 * for which dough a code stands for while it is baked. Costs only for those who may see them.
 * Refuses: not-found, plan-not-possible, unknown-format, damaged-text, took-too-long, not-worked-out.
 */
export const getPlan = query({
  name: 'trials.get-plan',
  input: z.strictObject({ trialId: z.uuid() }),
  right: 'read-work',
  async run({ db, actor, now, input: { trialId } }) {
    const { bakeryId, personId } = actor
    const trial = await db.trial.findUnique({
      where: { bakeryId_id: { bakeryId, id: trialId } },
      select: {
        id: true,
        number: true,
        state: true,
        revision: true,
        createdAt: true,
        proposedAt: true,
        closedAt: true,
        closedWhy: true,
        planText: true,
        planHash: true,
        proposedBy: { select: { id: true, name: true } },
        measure: { select: { code: true } },
        decisions: {
          select: {
            verdict: true,
            personName: true,
            role: true,
            meaning: true,
            note: true,
            planHash: true,
            byProposer: true,
            byCoAuthor: true,
            at: true,
          },
          orderBy: { at: 'asc' },
        },
        mixDays: {
          select: {
            number: true,
            day: true,
            batches: { where: { begunAt: { not: null } }, select: { id: true }, take: 1 },
          },
          orderBy: { number: 'asc' },
        },
        authors: { select: { personId: true } },
        bakery: { select: { timeZone: true, ...deciders } },
      },
    })
    if (!trial) throw new Refusal('not-found')
    const { planText, planHash, bakery, proposedBy, authors, mixDays, measure, ...rest } = trial
    const facts = planText === null ? await loadPlanFacts(db, bakeryId, trialId) : null
    const plan =
      planText !== null && planHash !== null
        ? planOfText(planText, planHash)
        : facts && (await drawUpOrRefuse(facts, null))
    if (!plan) throw new Refusal('not-found')
    const hands = handsOf({ proposedById: proposedBy.id, authors }, bakery)
    const bar = decisionBar({ personId, ...hands })
    const mayDecide = levelOf(actor, 'approve-plan') === 'yes'
    const seesCosts = levelOf(actor, 'see-costs') === 'yes'
    const [knowers, costs] = await Promise.all([
      mayDecide && planHash !== null ? listKnowers(db, { bakeryId, trialId, planHash }) : [],
      seesCosts ? costsOfPlan(db, bakeryId, plan, dayInZone(now, bakery.timeZone)) : undefined,
    ])
    return {
      trial: {
        ...rest,
        planHash,
        /** Of its measure; a frozen plan has the name only. */
        measureCode: measure.code,
        proposedBy: proposedBy.name,
        isFrozen: isFrozen(trial.state),
        standing: standingOf({ state: trial.state, lastVerdict: trial.decisions.at(-1)?.verdict ?? null }),
      },
      plan: {
        ...plan,
        arms: plan.arms.map((arm) => ({ ...arm, toWeigh: linesToWeigh(plan, arm) })),
        order: plan.order && orderShown(plan.order, isKeyOpen(trial.state)),
      },
      /** Of a draft, for who may change it: the lines of which something can be chosen, and the scales. */
      choosing:
        facts && trial.state === 'draft' && levelOf(actor, 'propose-trial') === 'yes'
          ? {
              lines: linesToChoose(facts, plan),
              scales: facts.scales.map(({ id, name, mostG, resolutionG }) => ({ id, name, mostG, resolutionG })),
            }
          : null,
      /** Who knows which dough is which, for those who answer for the trial. */
      knowers,
      days: mixDays.map(({ number, day, batches }) => ({ number, day: dayOfDate(day), isBegun: batches.length > 0 })),
      ...(costs ? { costs } : {}),
      may: {
        change: trial.state === 'draft' && levelOf(actor, 'propose-trial') === 'yes',
        decide: trial.state === 'proposed' && mayDecide && bar === null,
        /** Why somebody with the right may not decide on this one. */
        decisionBar: trial.state === 'proposed' && mayDecide ? bar : null,
        /** The decision would be on one's own proposal or own doughs, and the record will say so. */
        ...handIn({ personId, ...hands }),
        /** Takes it back before it is decided on. */
        withdraw:
          trial.state === 'proposed' &&
          levelOf(actor, 'propose-trial') === 'yes' &&
          withdrawalBar({ personId, proposedById: proposedBy.id }) === null,
        import: isOpen(trial.state) && levelOf(actor, 'import-readings') === 'yes',
        date: mayDecide && isOpen(trial.state),
        /** Once it is being baked it ends with its result, on the page of that. */
        stop: mayDecide && trial.state === 'approved',
      },
    }
  },
})

/** The drawn order, with the dough that a code stands for where that is told. */
function orderShown({ batches, cleanDownAfterDay }: NonNullable<Plan['order']>, isOpen: boolean) {
  const shown = ({ arm, ...batch }: PlanBatch) => ({ ...batch, arm: isOpen ? arm : null })
  return { batches: batches.map(shown), cleanDownAfterDay, isKeyOpen: isOpen }
}
