import 'server-only'
import type { Allergen } from '../../db/generated/enums'
import { armTotals, heldTotalOf } from './as-arm-line'
import { askedTotals } from './asked-totals'
import { balanceOfArm } from './balance-of-arm'
import { bindsWater } from './binds-water'
import type { ControlDough } from './draw-up-plan'
import type { PlanArm, PlanDose, PlanFacts, PlanIngredient, PlanLine, PlanScale, PlanWarning } from './plan-types'
import { resolveDose } from './resolve-dose'
import { waterOfArm } from './water-of-arm'
import { weighedLines } from './weighed-lines'
import { doseErrorLimitShare, weighingOfDose } from './weighing-of-dose'

/** The name under which the control is kept; screens have their own word for it. */
export const controlName = 'control'

/** The control's dough as a plan shows it. */
export function drawUpControl(facts: PlanFacts, control: ControlDough): PlanArm {
  const lines = control.lines.map(({ stageId, ingredient, massG, weighedG }): PlanLine => ({
    stageId,
    ingredientId: ingredient.id,
    ingredient: ingredient.name,
    kind: ingredient.kind,
    dose: null,
    controlG: massG,
    exactG: massG,
    weighedG,
    changeG: 0,
    atBound: null,
  }))
  return { position: 0, name: controlName, onTop: false, outcome: 'control', doses: [], lines, totals: [], ...doughFacts(facts, control, lines, []) }
}

/** One dough of a test arm: doses, what moved for them, what is left over, and what to mind. */
export function drawUpArm(facts: PlanFacts, control: ControlDough, arm: PlanFacts['arms'][number], position: number): PlanArm {
  const leftG = new Map(control.lines.filter(({ isFinalDough }) => isFinalDough).map(({ id, massG }) => [id, massG]))
  const doses = arm.doses.map((dose) => drawUpDose(facts, control, dose, leftG))
  const set = control.lines.flatMap(({ id, massG }) => ((leftG.get(id) ?? massG) === massG ? [] : [{ lineId: id, massG: leftG.get(id) ?? massG }]))
  const { balanced, warnings } = balanceOfArm(facts, control, arm, doses, set)
  // A dose that only takes out is no line of its own.
  const lines = weighedLines(control, balanced, doses).filter((line) => line.dose === null || line.exactG > 0)
  const asked = askedTotals(doses)
  return {
    position,
    name: arm.name,
    onTop: arm.onTop,
    outcome: balanced.outcome,
    doses: doses.map(({ dose }) => dose),
    lines,
    totals: balanced.totals.map(({ total, isHeld, controlG, differenceG, differencePctFlour }) => ({
      total: heldTotalOf(total),
      isHeld: isHeld || (!arm.onTop && facts.declared.heldTotals.some((held) => armTotals[held] === total) && !asked.includes(total)),
      controlG,
      differenceG,
      differencePctFlour,
    })),
    ...doughFacts(facts, control, lines, [...doses.flatMap((each, d) => doseWarnings(facts, control, each, lines, d)), ...warnings]),
  }
}

export type DrawnDose = { dose: PlanDose; ingredient: PlanIngredient; insteadOf: PlanIngredient | null }

function drawUpDose(facts: PlanFacts, control: ControlDough, asked: PlanFacts['arms'][number]['doses'][number], leftG: Map<string, number>): DrawnDose {
  const given = (wanted: string) => {
    const ingredient = facts.ingredients.find(({ id }) => id === wanted)
    if (!ingredient) throw new Error(`ingredient ${wanted} is not given`)
    return ingredient
  }
  const ingredient = given(asked.ingredientId)
  const insteadOf = asked.insteadOfId === null ? null : given(asked.insteadOfId)
  const resolved = resolveDose({ dose: asked, ingredient, insteadOf, control, leftG })
  const { productG } = resolved
  return {
    ingredient,
    insteadOf,
    dose: {
      ...asked,
      ...resolved,
      insteadOf: insteadOf?.name ?? null,
      ingredient: ingredient.name,
      activeName: ingredient.activeName,
      activeShare: ingredient.activeShare,
      productPctFlour: (100 * productG) / control.flourG,
      weighing: facts.scale && productG > 0 ? weighingOfDose({ productG, flourG: control.flourG, scale: facts.scale }) : null,
    },
  }
}

function doseWarnings(facts: PlanFacts, control: ControlDough, { dose, ingredient, insteadOf }: DrawnDose, lines: readonly PlanLine[], d: number): PlanWarning[] {
  const { name } = ingredient
  const found: PlanWarning[] = []
  const warn = (code: PlanWarning['code'], more: PlanWarning['facts'] = {}) => found.push({ code, dose: d, facts: { ingredient: name, ...more } })
  if (ingredient.customary) {
    // What the dough has of it altogether counts, not what this dose adds.
    const totalG = lines.filter(({ ingredientId }) => ingredientId === ingredient.id).reduce((sum, line) => sum + line.exactG, 0)
    const pct = (100 * totalG) / control.flourG
    const { leastPct, mostPct, source } = ingredient.customary
    if (pct > mostPct * (1 + 1e-9)) warn('above-customary', { pct, leastPct, mostPct, source })
    if (totalG > 0 && pct < leastPct * (1 - 1e-9)) warn('below-customary', { pct, leastPct, mostPct, source })
  }
  if (ingredient.composition === null && ingredient.kind !== 'water') warn('composition-unknown')
  if (dose.weighing && dose.weighing.errorPct > 100 * doseErrorLimitShare) warn('dose-coarse', { errorPct: dose.weighing.errorPct, leastG: dose.weighing.leastG })
  const line = lines.find((each) => each.dose === d)
  if (line?.weighedG === 0) warn('rounded-to-nothing')
  if (facts.scale?.leastG && dose.productG > 0 && dose.productG < facts.scale.leastG) warn('below-scale', { leastG: facts.scale.leastG })
  const binding = [ingredient, insteadOf].find((each) => each && bindsWater(each))
  if (binding) warn('water-to-consistency', { ingredient: binding.name })
  if (ingredient.dustCaution && dose.productG > 0) warn('dust')
  if (ingredient.isEnded) warn('ingredient-ended')
  return found
}

type DoughFacts = Pick<PlanArm, 'doughG' | 'doughWeighedG' | 'allergens' | 'addedAllergens' | 'uncheckedIngredients' | 'water' | 'warnings'>

function doughFacts(facts: PlanFacts, control: ControlDough, lines: readonly PlanLine[], warnings: readonly PlanWarning[]): DoughFacts {
  const byId = new Map(facts.ingredients.map((ingredient) => [ingredient.id, ingredient]))
  const ingredientsOf = (some: readonly { ingredientId: string }[]) => [...new Set(some.map(({ ingredientId }) => ingredientId))].flatMap((id) => byId.get(id) ?? [])
  // What is left out brings no allergen any more.
  const present = ingredientsOf(lines.filter(({ exactG }) => exactG > 0))
  const allergens = allergensOf(present)
  const ofControl = allergensOf(control.lines.map(({ ingredient }) => ingredient))
  const addedAllergens = allergens.filter((each) => !ofControl.includes(each))
  const unchecked = present.filter(({ allergensChecked }) => !allergensChecked)
  const doughG = lines.reduce((sum, line) => sum + line.exactG, 0)
  return {
    doughG,
    doughWeighedG: lines.reduce((sum, line) => sum + line.weighedG, 0),
    allergens,
    addedAllergens,
    uncheckedIngredients: unchecked.map(({ name }) => name),
    water: waterOfArm({
      lines: lines.flatMap((line) => {
        const ingredient = byId.get(line.ingredientId)
        const isFinalDough = facts.stages.find(({ id }) => id === line.stageId)?.kind === 'final_dough'
        return ingredient ? [{ ingredient, isFinalDough, massG: line.weighedG }] : []
      }),
      declared: facts.declared,
      process: facts.process,
      mixer: facts.mixer,
    }),
    warnings: [
      ...warnings,
      ...(addedAllergens.length > 0 ? [{ code: 'allergen-added' as const, dose: null, facts: { allergens: addedAllergens.join(',') } }] : []),
      ...unchecked.map(({ name }): PlanWarning => ({ code: 'allergen-unchecked', dose: null, facts: { ingredient: name } })),
      ...mixerWarnings(facts, doughG),
      ...capacityWarnings(facts.scale, lines),
    ],
  }
}

function allergensOf(ingredients: readonly PlanIngredient[]): Allergen[] {
  return [...new Set(ingredients.flatMap(({ allergens }) => allergens))].sort()
}

function mixerWarnings({ mixer }: PlanFacts, doughG: number): PlanWarning[] {
  if (mixer && doughG < mixer.leastG) return [{ code: 'mixer-below', dose: null, facts: { mixer: mixer.name, doughG, leastG: mixer.leastG } }]
  if (mixer && doughG > mixer.mostG) return [{ code: 'mixer-above', dose: null, facts: { mixer: mixer.name, doughG, mostG: mixer.mostG } }]
  return []
}

function capacityWarnings(scale: PlanScale | null, lines: readonly PlanLine[]): PlanWarning[] {
  if (!scale) return []
  return lines.filter((line) => line.weighedG > scale.mostG).map((line): PlanWarning => ({ code: 'above-scale', dose: line.dose, facts: { ingredient: line.ingredient, mostG: scale.mostG } }))
}
