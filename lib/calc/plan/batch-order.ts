import { mustBeWhole, mustHaveAtLeast } from '../checks'
import { CalcError } from '../error'
import { type Random, seededRandom } from '../random/seeded-random'
import { shuffle } from '../random/shuffle'

export type ArmToBake = {
  arm: string
  batchesPerBlock: number
  /** Allergens that the arm brings and that not every arm has. */
  addedAllergens: readonly string[]
}

export type PlannedBatch = {
  block: string
  /** Place in the block, from 1. */
  place: number
  arm: string
  /** Which of the arm's batches in this block, from 1. */
  copy: number
  /** Allergens of earlier batches of the block that this batch must not carry: clean down and sign before it. */
  cleanDownOf: string[]
}

export type BatchOrder = {
  method: 'random-within-blocks-and-allergen-steps'
  seed: string
  batches: PlannedBatch[]
  /** Arms with an added allergen come late in every block, so their place is not random against the others. */
  warnings: 'place-tied-to-allergen'[]
}

/**
 * Order of batches within blocks. Doughs without an added allergen come first, then those with fewer added allergens
 * before those with more; within a step, and between sets of allergens of one size, the order is random.
 * The same seed and input give the same order.
 * @param seed stored with the plan; @param blocks names, 1 or more; @param arms 1 or more, 1 to 20 batches per block
 * @throws CalcError 'empty' | 'out-of-range' | 'not-finite' | 'duplicate'
 * Source: Fisher (1935), The Design of Experiments (randomised blocks); allergen steps: common practice, no source.
 */
export function batchOrder(q: { seed: string; blocks: readonly string[]; arms: readonly ArmToBake[] }): BatchOrder {
  mustHaveAtLeast('blocks', q.blocks, 1)
  mustHaveAtLeast('arms', q.arms, 1)
  if (new Set(q.blocks).size !== q.blocks.length) throw new CalcError('duplicate', { field: 'blocks' })
  if (new Set(q.arms.map(({ arm }) => arm)).size !== q.arms.length) throw new CalcError('duplicate', { field: 'arms' })
  q.arms.forEach(({ batchesPerBlock }, i) =>
    mustBeWhole(`arms[${i}].batchesPerBlock`, batchesPerBlock, { min: 1, max: 20 }),
  )
  const random = seededRandom(q.seed)
  const batches = q.blocks.flatMap((block) => orderOfBlock(random, block, q.arms))
  const steps = new Set(q.arms.map(stepOf))
  return {
    method: 'random-within-blocks-and-allergen-steps',
    seed: q.seed,
    batches,
    warnings: steps.size > 1 ? ['place-tied-to-allergen'] : [],
  }
}

function orderOfBlock(random: Random, block: string, arms: readonly ArmToBake[]): PlannedBatch[] {
  const groups = [...new Set(arms.map(stepOf))].map((step) => arms.filter((arm) => stepOf(arm) === step))
  // the sort keeps the random order of steps that add equally many allergens
  const steps = shuffle(random, groups).sort((a, b) => allergenCount(a) - allergenCount(b))
  const order = steps.flatMap((group) =>
    shuffle(
      random,
      group.flatMap((arm) => Array.from({ length: arm.batchesPerBlock }, () => arm)),
    ),
  )
  const copies = new Map<string, number>()
  let left: string[] = []
  return order.map(({ arm, addedAllergens }, i) => {
    const copy = (copies.get(arm) ?? 0) + 1
    copies.set(arm, copy)
    const cleanDownOf = left.filter((allergen) => !addedAllergens.includes(allergen)).sort()
    // a clean-down takes away what it names; what this batch brings stays
    left = [...new Set([...left.filter((allergen) => !cleanDownOf.includes(allergen)), ...addedAllergens])]
    return { block, place: i + 1, arm, copy, cleanDownOf }
  })
}

/** Arms with the same added allergens are one step. */
function stepOf(arm: ArmToBake): string {
  return JSON.stringify([...new Set(arm.addedAllergens)].sort())
}

function allergenCount(step: readonly ArmToBake[]): number {
  return Math.max(...step.map((arm) => new Set(arm.addedAllergens).size))
}
