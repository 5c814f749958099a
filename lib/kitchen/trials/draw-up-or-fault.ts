import 'server-only'
import { CalcError } from '../../calc/error'
import { drawUpPlan } from './draw-up-plan'
import type { Plan, PlanFacts } from './plan-types'

/** A plan, or the field of the calculation that refused it. */
export type DrawnUp = { ok: true; plan: Plan } | { ok: false; field: string }

/** Draws up a plan; figures that no dough can have are an answer and no exception. */
export function drawUpOrFault(facts: PlanFacts, seed: string | null): DrawnUp {
  try {
    return { ok: true, plan: drawUpPlan(facts, seed) }
  } catch (error) {
    if (!(error instanceof CalcError)) throw error
    return { ok: false, field: error.facts.field }
  }
}
