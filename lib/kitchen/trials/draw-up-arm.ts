import 'server-only'
import { balanceArm, type BalancedArm } from '../../calc/arms/balance-arm'
import { totalShare } from '../../calc/arms/total-share'
import { roundToResolutions } from '../../calc/formula/round-to-resolutions'
import { roundToScaleG } from '../../calc/weighing/round-to-scale'
import type { Allergen } from '../../db/generated/enums'
import { armTotals, asArmLine, heldTotalOf } from './as-arm-line'
import { doseMassG } from './dose-mass'
import type { ControlDough } from './draw-up-plan'
import { movesOfArm } from './moves-of-arm'
import type { PlanArm, PlanDose, PlanFacts, PlanIngredient, PlanLine, PlanScale, PlanWarning } from './plan-types'
import { waterOfArm } from './water-of-arm'
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
  const doses = arm.doses.map((dose) => drawUpDose(facts, control, dose))
  const { balanced, warnings } = balance(facts, control, arm, doses)
  const lines = roundedLines(control, balanced, doses)
  return {
    position,
    name: arm.name,
    onTop: arm.onTop,
    outcome: balanced.outcome,
    doses: doses.map(({ dose }) => dose),
    lines,
    totals: balanced.totals.map(({ total, isHeld, controlG, differenceG, differencePctFlour }) => ({
      total: heldTotalOf(total),
      isHeld: isHeld || (!arm.onTop && facts.declared.heldTotals.includes(heldTotalOf(total))),
      controlG,
      differenceG,
      differencePctFlour,
    })),
    ...doughFacts(facts, control, lines, [...doses.flatMap((each, d) => doseWarnings(facts, control, each, lines, d)), ...warnings]),
  }
}

type DrawnDose = { dose: PlanDose; ingredient: PlanIngredient }

function drawUpDose(facts: PlanFacts, control: ControlDough, asked: PlanFacts['arms'][number]['doses'][number]): DrawnDose {
  const ingredient = facts.ingredients.find(({ id }) => id === asked.ingredientId)
  if (!ingredient) throw new Error(`ingredient ${asked.ingredientId} is not given`)
  const productG = doseMassG({ dose: asked, flourG: control.flourG, activeShare: ingredient.activeShare })
  return {
    ingredient,
    dose: {
      ...asked,
      ingredient: ingredient.name,
      activeName: ingredient.activeName,
      activeShare: ingredient.activeShare,
      productG,
      productPctFlour: (100 * productG) / control.flourG,
      weighing: facts.scale && weighingOfDose({ productG, flourG: control.flourG, scale: facts.scale }),
    },
  }
}

function balance(
  facts: PlanFacts,
  control: ControlDough,
  arm: PlanFacts['arms'][number],
  doses: readonly DrawnDose[],
): { balanced: BalancedArm; warnings: PlanWarning[] } {
  const { resolutionG } = control
  const armLines = control.lines.map(({ id, ingredient, massG }) => asArmLine(id, ingredient, massG, resolutionG))
  const added = doses.map(({ dose, ingredient }, d) => asArmLine(`dose.${d}`, ingredient, dose.productG, resolutionG))
  if (arm.onTop) return { balanced: balanceArm({ control: armLines, added, hold: [], moves: [], how: 'on-top' }), warnings: [] }

  const wanted = facts.declared.heldTotals.map((held) => armTotals[held])
  // A total that a dose does not state cannot be held; the others are, and the plan says so.
  const unstated = wanted.flatMap((total) => added.flatMap((line, d) => (totalShare(line, total) === null ? [{ total, d }] : [])))
  const hold = wanted.filter((total) => !unstated.some((each) => each.total === total))
  const finalDough = armLines.filter((line) => control.lines.some(({ id, isFinalDough }) => id === line.id && isFinalDough))
  const { moves, unstatedLineIds } = movesOfArm(finalDough, hold)
  const warnings: PlanWarning[] = [
    ...unstated.map(({ total, d }): PlanWarning => ({
      code: 'balance-not-stated',
      dose: d,
      facts: { ingredient: doses[d]?.ingredient.name ?? '', total: heldTotalOf(total) },
    })),
    ...[...new Set(unstatedLineIds)].map((id): PlanWarning => ({
      code: 'composition-unknown',
      dose: null,
      facts: { ingredient: control.lines.find((line) => line.id === id)?.ingredient.name ?? '' },
    })),
  ]
  const balanced: BalancedArm =
    hold.length === 0
      ? { ...balanceArm({ control: armLines, added, hold: [], moves: [], how: 'on-top' }), outcome: 'not-balanced' }
      : balanceArm({ control: armLines, added, hold, moves, how: 'balanced' })
  const reasons = balanced.reasons.map((reason): PlanWarning => ({
    code: `balance-${reason.code}`,
    dose: null,
    facts: { total: heldTotalOf(reason.total), broughtG: reason.broughtG, removableG: reason.removableG },
  }))
  const outcome = unstated.length > 0 ? 'not-balanced' : balanced.outcome
  return { balanced: { ...balanced, outcome }, warnings: [...warnings, ...reasons] }
}

/**
 * Masses for the scale. Lines that did not move keep the control's; those that did are rounded together so that their
 * sum does not drift; each dose goes to the mark nearest to it, because it is what the arm is about.
 */
function roundedLines(control: ControlDough, balanced: BalancedArm, doses: readonly DrawnDose[]): PlanLine[] {
  const { resolutionG } = control
  const moved = balanced.lines.filter((line) => line.changeG !== 0)
  const rounded = moved.length === 0 ? [] : roundToResolutions(moved.map((line) => ({ id: line.lineId, massG: line.armG, resolutionG }))).lines
  const ofControl = control.lines.map(({ id, stageId, ingredient, massG, weighedG }): PlanLine => {
    const line = balanced.lines.find(({ lineId }) => lineId === id)
    return {
      stageId,
      ingredientId: ingredient.id,
      ingredient: ingredient.name,
      kind: ingredient.kind,
      dose: null,
      controlG: massG,
      exactG: line?.armG ?? massG,
      weighedG: rounded.find((each) => each.id === id)?.massG ?? weighedG,
      changeG: line?.changeG ?? 0,
      atBound: line?.atBound ?? null,
    }
  })
  const ofDoses = doses.map(({ dose, ingredient }, d): PlanLine => ({
    stageId: control.doseStageId,
    ingredientId: ingredient.id,
    ingredient: ingredient.name,
    kind: ingredient.kind,
    dose: d,
    controlG: 0,
    exactG: dose.productG,
    weighedG: roundToScaleG({ massG: dose.productG, resolutionG }),
    changeG: dose.productG,
    atBound: null,
  }))
  return [...ofControl, ...ofDoses]
}

function doseWarnings(facts: PlanFacts, control: ControlDough, { dose, ingredient }: DrawnDose, lines: readonly PlanLine[], d: number): PlanWarning[] {
  const { name } = ingredient
  const found: PlanWarning[] = []
  const warn = (code: PlanWarning['code'], more: PlanWarning['facts'] = {}) => found.push({ code, dose: d, facts: { ingredient: name, ...more } })
  if (ingredient.customary) {
    // What the dough has of it altogether counts, not what this dose adds.
    const totalG = lines.filter(({ ingredientId }) => ingredientId === ingredient.id).reduce((sum, line) => sum + line.exactG, 0)
    const pct = (100 * totalG) / control.flourG
    const { leastPct, mostPct, source } = ingredient.customary
    if (pct > mostPct * (1 + 1e-9)) warn('above-customary', { pct, leastPct, mostPct, source })
    if (pct < leastPct * (1 - 1e-9)) warn('below-customary', { pct, leastPct, mostPct, source })
  }
  if (ingredient.composition === null && ingredient.kind !== 'water') warn('composition-unknown')
  if (dose.weighing && dose.weighing.errorPct > 100 * doseErrorLimitShare) warn('dose-coarse', { errorPct: dose.weighing.errorPct, leastG: dose.weighing.leastG })
  const line = lines.find((each) => each.dose === d)
  if (line?.weighedG === 0) warn('rounded-to-nothing')
  if (facts.scale?.leastG && dose.productG < facts.scale.leastG) warn('below-scale', { leastG: facts.scale.leastG })
  if (ingredient.dustCaution) warn('dust')
  if (ingredient.isEnded) warn('ingredient-ended')
  return found
}

type DoughFacts = Pick<PlanArm, 'doughG' | 'doughWeighedG' | 'allergens' | 'addedAllergens' | 'uncheckedIngredients' | 'water' | 'warnings'>

function doughFacts(facts: PlanFacts, control: ControlDough, lines: readonly PlanLine[], warnings: readonly PlanWarning[]): DoughFacts {
  const byId = new Map(facts.ingredients.map((ingredient) => [ingredient.id, ingredient]))
  const ingredientsOf = (some: readonly { ingredientId: string }[]) => [...new Set(some.map(({ ingredientId }) => ingredientId))].flatMap((id) => byId.get(id) ?? [])
  const present = ingredientsOf(lines)
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
