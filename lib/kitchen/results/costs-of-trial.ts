import 'server-only'
import type { Db, Tx } from '../../db/client'
import { onlyOne } from '../only-one'
import { costedLine } from '../stores/costed-lines'
import { priceOn } from '../stores/price-on'
import type { CostedArm } from './cost-and-gain'
import { costsShown } from './costs-shown'
import { countBatches, meanOf, type CountedBatch } from './count-batches'
import { waterTaken, withWater } from './dough-as-mixed'
import { isBroken, type loadEvidence } from './load-evidence'
import { mayCompare, stageOfTrial } from './stage-of-trial'
import type { MeasuredPiece } from './trial-facts'

/**
 * Ingredient cost of each arm at the prices of a day: amounts are decimal text in major units, not rounded. For those
 * who see costs: whoever calls has made sure of that. Until the readings are closed only what the plan says is costed;
 * from then on water counts as it was taken, where every dough of an arm has it in the book.
 * @param day YYYY-MM-DD, in the bakery's zone
 */
export async function costsOfTrial(...asked: Parameters<typeof costsWithRest>) {
  const { rests: _, ...costs } = await costsWithRest(...asked)
  return costs
}

/** The same with what it was worked out from. */
export async function costsWithRest(
  from: Db | Tx,
  bakeryId: string,
  { header, declared, batches, arms: planned, sealed }: Awaited<ReturnType<typeof loadEvidence>>,
  day: string,
) {
  const ids = planned.flatMap(({ lines }) => lines.map(({ ingredientId }) => ingredientId))
  const held = await priceOn(from, bakeryId, [...new Set(ids)], day)
  const count = countBatches({ factor: declared.factor, batches })
  const comparable = mayCompare(stageOfTrial(declared, count)) && !isBroken(sealed) ? count.counted : []
  const arms = planned.map(({ position, lines }): CostedArm => {
    const baked = comparable.filter(({ batch }) => batch.arm === position)
    const takenG = waterTaken(baked.map(({ batch }) => batch))
    return {
      arm: position,
      lines: (takenG === null ? lines : withWater(lines, takenG)).map(({ ingredientId, ingredient, weighedG }) =>
        costedLine(
          { ingredientId, name: ingredient.name, massG: weighedG, isWater: ingredient.kind === 'water' },
          held,
        ),
      ),
      addedIngredientId: addedIngredient(lines),
      goodPieces: baked.map(({ batch }) => batch.piecesGood),
      loafMassG: meanOfPieces(baked, ({ loafMassG }) => loafMassG),
      loafVolumeMl: meanOfPieces(baked, ({ volumeMl }) => volumeMl),
    }
  })
  const rests = { piecesPlanned: header.piecesPerBatch, arms }
  const pricedFrom = [...held.values()].map(({ holdsFrom }) => holdsFrom).sort()
  return { day, latestPriceFrom: pricedFrom.at(-1) ?? null, ...costsShown(day, rests), rests }
}

/** The one ingredient of which the control has none; null when there is none such, or several. */
function addedIngredient(
  lines: readonly { ingredientId: string; controlMassG: number; weighedG: number }[],
): string | null {
  const sums = new Map<string, { control: number; own: number }>()
  for (const { ingredientId, controlMassG, weighedG } of lines) {
    const sum = sums.get(ingredientId) ?? { control: 0, own: 0 }
    sums.set(ingredientId, { control: sum.control + controlMassG, own: sum.own + weighedG })
  }
  return onlyOne([...sums].flatMap(([id, { control, own }]) => (control === 0 && own > 0 ? [id] : [])))
}

/** Mean of the batches' means. */
function meanOfPieces(
  batches: readonly CountedBatch[],
  figureOf: (piece: MeasuredPiece) => number | null,
): number | null {
  const means = batches.flatMap(({ batch }) => {
    const values = batch.pieces.flatMap((piece) => figureOf(piece) ?? [])
    return values.length === 0 ? [] : meanOf(values)
  })
  return means.length === 0 ? null : meanOf(means)
}
