import 'server-only'
import { CalcError } from '../../calc/error'
import { nutrientShare } from '../../calc/formula/nutrient-share'
import { compositionOrWater } from './as-arm-line'
import { doseMassG } from './dose-mass'
import type { ControlDough } from './drawn-dough'
import type { PlanDoseAsked, PlanIngredient } from './plan-types'

export type ResolvedDose = {
  /** What is put in beside the control's lines, g, ≥ 0. */
  productG: number
  /** What the control has of the ingredient, all stages, g. */
  controlG: number
  /** What the arm has of it before anything is balanced, g. */
  inAllG: number
  /** What goes out of the ingredient that it takes the place of, g; 0 where there is none. */
  removedG: number
}

/** What is left of a line below this part of it is binary dust: the line is left out. */
const DUST = 1e-9

/**
 * What a dose puts in and takes out, from what it says: more or less than the control, so much in all, or in place of
 * another ingredient. What goes out goes out of the final dough, of several lines in proportion: pre-ferments, scalds
 * and soakers are made once for all doughs.
 * @param leftG mass of each line of the final dough so far, by id; lowered here, so that several doses share them
 * @throws CalcError 'out-of-range' where the final dough has less than is to go out; 'not-possible' with reason
 *   'not-stated' where what is to stay equal is not stated by both ingredients
 * @example salt 18 g in the control, 'to 1.2 % in all' of 1000 g flour: 6 g go out
 */
export function resolveDose(q: {
  dose: PlanDoseAsked
  ingredient: PlanIngredient
  insteadOf: PlanIngredient | null
  control: ControlDough
  leftG: Map<string, number>
}): ResolvedDose {
  const { dose, ingredient, insteadOf, control, leftG } = q
  const askedG =
    Math.sign(dose.value) *
    doseMassG({
      dose: { ...dose, value: Math.abs(dose.value) },
      flourG: control.flourG,
      activeShare: ingredient.activeShare,
    })
  const controlG = control.lines.reduce((sum, line) => sum + (line.ingredient.id === ingredient.id ? line.massG : 0), 0)
  if (dose.how === 'in_place') {
    if (insteadOf === null || dose.equalBy === null) throw new Error('a replacement that does not say of what')
    const outG = dose.allOfIt ? leftOf(insteadOf, control, leftG) : askedG
    if (!(outG > 0)) throw new CalcError('out-of-range', { field: 'dose', value: outG, min: 0 })
    const productG = outG * equalShare(insteadOf, ingredient, dose.equalBy)
    takeOut(insteadOf, outG, control, leftG)
    return { productG, controlG, inAllG: controlG + productG, removedG: outG }
  }
  const wantedG = dose.how === 'in_all' ? askedG - controlG : askedG
  const moreG = Math.abs(wantedG) <= DUST * Math.max(controlG, Math.abs(askedG)) ? 0 : wantedG
  if (moreG < 0) takeOut(ingredient, -moreG, control, leftG)
  return { productG: Math.max(0, moreG), controlG, inAllG: controlG + moreG, removedG: 0 }
}

/** Grams of the new ingredient for each gram of the one that goes out. */
function equalShare(out: PlanIngredient, into: PlanIngredient, by: NonNullable<PlanDoseAsked['equalBy']>): number {
  if (by === 'mass') return 1
  const of = (ingredient: PlanIngredient) =>
    by === 'active' ? ingredient.activeShare : nutrientShare(compositionOrWater(ingredient), by)
  const outShare = of(out)
  const intoShare = of(into)
  if (!outShare || !intoShare)
    throw new CalcError('not-possible', { field: 'equalBy', value: by, reason: 'not-stated' })
  return outShare / intoShare
}

/** What is left so far of an ingredient in the final dough, g. */
function leftOf(ingredient: PlanIngredient, control: ControlDough, leftG: ReadonlyMap<string, number>): number {
  return control.lines.reduce(
    (sum, line) => sum + (line.isFinalDough && line.ingredient.id === ingredient.id ? (leftG.get(line.id) ?? 0) : 0),
    0,
  )
}

function takeOut(ingredient: PlanIngredient, outG: number, control: ControlDough, leftG: Map<string, number>): void {
  const lines = control.lines.filter((line) => line.isFinalDough && line.ingredient.id === ingredient.id)
  const thereG = leftOf(ingredient, control, leftG)
  if (outG > thereG * (1 + DUST)) throw new CalcError('out-of-range', { field: 'dose', value: outG, max: thereG })
  const keptShare = outG >= thereG * (1 - DUST) ? 0 : 1 - outG / thereG
  for (const { id } of lines) leftG.set(id, (leftG.get(id) ?? 0) * keptShare)
}
