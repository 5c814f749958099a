import 'server-only'
import { hashOfFacts } from '../heavy/hash-of-facts'
import { inPool } from '../heavy/in-pool'
import { keepLast } from '../heavy/keep-last'
import { Refusal } from '../refusal'
import { figureOfPlan } from './figure-of-plan'
import type { Plan, PlanFacts } from './plan-types'

/** Plans of so many drafts are kept by this process: a draft is looked at more often than it changes. */
const drawn = keepLast<Plan>(100)

/**
 * Draws up a plan, by a worker. What the stores have lost since the draft was written, and figures that no dough can
 * have, are a refusal that names what is at fault.
 * @throws Refusal 'dose-without-active' | 'plan-not-possible' | 'took-too-long' | 'not-worked-out'
 */
export async function drawUpOrRefuse(facts: PlanFacts, seed: string | null): Promise<Plan> {
  mustHaveActives(facts)
  return drawn(hashOfFacts([facts, seed]), async () => {
    const answer = await inPool('draw-up-plan', { facts, seed })
    if (!answer.ok) throw new Refusal('plan-not-possible', { figure: figureOfPlan(answer.field) })
    return answer.plan
  })
}

function mustHaveActives({ arms, ingredients }: PlanFacts): void {
  const dosedByActive = new Set(
    arms.flatMap((arm) =>
      arm.doses.filter(({ doseOf }) => doseOf === 'active').map(({ ingredientId }) => ingredientId),
    ),
  )
  const without = ingredients.find(({ id, activeShare }) => dosedByActive.has(id) && activeShare === null)
  if (without) throw new Refusal('dose-without-active', { ingredient: without.name })
}
