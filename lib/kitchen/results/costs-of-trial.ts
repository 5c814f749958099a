import 'server-only'
import type { Db, Tx } from '../../db/client'
import { costedLine } from '../stores/costed-lines'
import { priceOn } from '../stores/price-on'
import type { CostedArm } from './cost-and-gain'
import { costsShown } from './costs-shown'
import { countBatches, meanOf, type CountedBatch } from './count-batches'
import { waterTaken, withWater } from './dough-as-mixed'
import type { loadEvidence } from './load-evidence'
import { isBroken } from './load-sealed'
import { mayCompare, stageOfTrial } from './stage-of-trial'
import { dosedIn } from './same-volume-of-arm'
import type { MeasuredPiece } from './trial-facts'
import type { VolumeRatios } from './volume-ratios'

/**
 * Ingredient cost of each arm at the prices of a day: amounts are decimal text in major units, not rounded. For those
 * who see costs: whoever calls has made sure of that. A loaf is costed by the dough as it was worked out, as the plan and
 * the signature do; a batch by what was weighed, from the closing on with the water that was taken, where every dough of an
 * arm has it in the book.
 * @param day YYYY-MM-DD, in the bakery's zone
 * @param asked volumesOfTrial, which takes a worker the first time
 */
export async function costsOfTrial(...asked: Parameters<typeof costsWithRest>) {
  const { rests: _, ...costs } = await costsWithRest(...asked)
  return costs
}

/** The same with what it was worked out from. */
export async function costsWithRest(
  from: Db | Tx,
  bakeryId: string,
  { declared, batches, arms: planned, scaling, sealed }: Awaited<ReturnType<typeof loadEvidence>>,
  day: string,
  asked: VolumeRatios | Promise<VolumeRatios>,
) {
  const ids = planned.flatMap(({ lines }) => lines.map(({ ingredientId }) => ingredientId))
  const [held, volumes] = await Promise.all([priceOn(from, bakeryId, [...new Set(ids)], day), asked])
  const count = countBatches({ factor: declared.factor, batches })
  const comparable = mayCompare(stageOfTrial(declared, count)) && !isBroken(sealed) ? count.counted : []
  const arms = planned.map(({ position, lines, doses }): CostedArm => {
    const baked = comparable.filter(({ batch }) => batch.arm === position)
    const takenG = waterTaken(baked.map(({ batch }) => batch))
    const costed = ({ ingredientId, ingredient: { name, kind } }: (typeof lines)[number], massG: number) =>
      costedLine({ ingredientId, name, massG, isWater: kind === 'water' }, held)
    return {
      arm: position,
      lines: lines.map((line) => costed(line, line.massG)),
      mixedLines: (takenG === null ? lines : withWater(lines, takenG)).map((line) => costed(line, line.weighedG)),
      goodPieces: baked.map(({ batch }) => batch.piecesGood),
      loafMassG: meanOfPieces(baked, ({ loafMassG }) => loafMassG),
      loafVolumeMl: meanOfPieces(baked, ({ volumeMl }) => volumeMl),
      dosed: dosedIn(doses),
      volume: volumes.get(position) ?? null,
    }
  })
  const rests = { scaling, arms }
  const pricedFrom = [...held.values()].map(({ holdsFrom }) => holdsFrom).sort()
  return { day, latestPriceFrom: pricedFrom.at(-1) ?? null, ...costsShown(day, rests), rests }
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
