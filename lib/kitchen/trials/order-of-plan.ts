import 'server-only'
import { batchOrder } from '../../calc/plan/batch-order'
import { drawnCodes } from './drawn-codes'
import type { Plan, PlanArm, PlanDeclared } from './plan-types'

/** What an arm may leave in the bowl that the control does not have: allergens, and ingredients whose allergens nobody has checked. */
function addedBy(arm: PlanArm, control: PlanArm | undefined): string[] {
  const unchecked = arm.uncheckedIngredients.filter((name) => !control?.uncheckedIngredients.includes(name))
  return [...arm.addedAllergens, ...unchecked]
}

/**
 * Order and codes of all doughs, from the seed alone: random within each mixing day, doughs with an added allergen
 * last. The first dough of a day is cleaned for when the day before ended with something added.
 */
export function orderOfPlan(q: {
  seed: string
  declared: Pick<PlanDeclared, 'mixingDays' | 'batchesPerArm'>
  arms: readonly PlanArm[]
}): {
  plan: NonNullable<Plan['order']>
  isTiedToAllergen: boolean
} {
  const { seed, declared, arms } = q
  const control = arms.find(({ position }) => position === 0)
  const addedOf = new Map(arms.map((arm) => [arm.position, addedBy(arm, control)]))
  const order = batchOrder({
    seed,
    blocks: Array.from({ length: declared.mixingDays }, (_, i) => String(i + 1)),
    arms: arms.map(({ position }) => ({
      arm: String(position),
      batchesPerBlock: declared.batchesPerArm,
      addedAllergens: addedOf.get(position) ?? [],
    })),
  })
  const codes = drawnCodes(seed, order.batches.length)
  const leftAfter = new Map<number, string[]>()
  for (const batch of order.batches) {
    const left = (leftAfter.get(Number(batch.block)) ?? []).filter((each) => !batch.cleanDownOf.includes(each))
    leftAfter.set(Number(batch.block), [...new Set([...left, ...(addedOf.get(Number(batch.arm)) ?? [])])].sort())
  }
  const batches = order.batches.map((batch, i) => {
    const day = Number(batch.block)
    const arm = Number(batch.arm)
    const fromDayBefore =
      batch.place === 1 ? (leftAfter.get(day - 1) ?? []).filter((each) => !addedOf.get(arm)?.includes(each)) : []
    return {
      day,
      place: batch.place,
      arm,
      code: codes[i] ?? '',
      cleanDownOf: [...new Set([...batch.cleanDownOf, ...fromDayBefore])].sort(),
    }
  })
  return {
    plan: {
      method: order.method,
      seed,
      batches,
      cleanDownAfterDay: [...leftAfter].filter(([, of]) => of.length > 0).map(([day, of]) => ({ day, of })),
    },
    isTiedToAllergen: order.warnings.includes('place-tied-to-allergen'),
  }
}
