import 'server-only'
import { CalcError } from '../../calc/error'
import { Refusal } from '../refusal'
import { drawUpPlan } from './draw-up-plan'
import type { Plan, PlanFacts } from './plan-types'

/** Draws up a plan; figures that no dough can have are a refusal that names the one at fault. */
export function drawUpOrRefuse(facts: PlanFacts, seed: string | null): Plan {
  try {
    return drawUpPlan(facts, seed)
  } catch (error) {
    if (error instanceof CalcError) throw new Refusal('plan-not-possible', { field: error.facts.field })
    throw error
  }
}
