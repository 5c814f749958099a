import 'server-only'
import { roundToScaleG } from '../../calc/weighing/round-to-scale'
import type { Allergen } from '../../db/generated/enums'
import { armTotals, heldTotalOf } from './as-arm-line'
import { askedTotals } from './asked-totals'
import { balanceOfArm } from './balance-of-arm'
import { bindsWater } from './binds-water'
import type { ControlDough, DrawnDose } from './drawn-dough'
import { carrierOf } from './lines-to-weigh'
import type { PlanArm, PlanDose, PlanFacts, PlanIngredient, PlanLine, PlanScale, PlanWarning } from './plan-types'
import { resolutionOfLine } from './resolution-of-line'
import { relativeDoseErrorShare } from '../../calc/weighing/relative-dose-error'
import { preferredErrorShare, spreadOf } from './scale-for'
import { chosenScale, loadOf, scaleByRule } from './scale-of-lines'
import { resolveDose } from './resolve-dose'
import { waterOfArm } from './water-of-arm'
import { weighedLines } from './weighed-lines'
import { doseErrorLimitShare, weighingOfDose } from './weighing-of-dose'

/** The name under which the control is kept; screens have their own word for it. */
export const controlName = 'control'

/** The control's dough as a plan shows it. */
export function drawUpControl(facts: PlanFacts, control: ControlDough): PlanArm {
  const lines = control.lines.map(
    ({ stageId, ingredient, massG, weighedG, scale }): PlanLine => ({
      stageId,
      ingredientId: ingredient.id,
      ingredient: ingredient.name,
      kind: ingredient.kind,
      dose: null,
      controlG: massG,
      exactG: massG,
      weighedG,
      scaleId: scale?.id ?? null,
      changeG: 0,
      atBound: null,
    }),
  )
  return {
    position: 0,
    name: controlName,
    onTop: false,
    outcome: 'control',
    doses: [],
    lines,
    totals: [],
    ...doughFacts(facts, control, lines, []),
  }
}

/** One dough of a test arm: doses, what moved for them, what is left over, and what to mind. */
export function drawUpArm(
  facts: PlanFacts,
  control: ControlDough,
  arm: PlanFacts['arms'][number],
  position: number,
): PlanArm {
  const leftG = new Map(control.lines.filter(({ isFinalDough }) => isFinalDough).map(({ id, massG }) => [id, massG]))
  const doses = arm.doses.map((dose) => drawUpDose(facts, control, dose, leftG))
  const set = control.lines.flatMap(({ id, massG }) =>
    (leftG.get(id) ?? massG) === massG ? [] : [{ lineId: id, massG: leftG.get(id) ?? massG }],
  )
  const { balanced, warnings } = balanceOfArm(facts, control, arm, doses, set)
  // A dose that only takes out is no line of its own.
  const onScales = weighedLines(
    facts,
    control,
    balanced,
    doses.map(({ dose, ingredient }) => ({ ingredient, productG: dose.productG })),
  ).filter((line) => line.dose === null || line.exactG > 0)
  const weighed = doses.map(
    ({ dose, ...drawn }, d): WeighedDose => ({
      ...drawn,
      dose: { ...dose, weighing: weighingOf(facts, control, onScales, dose.productG, d) },
    }),
  )
  const lines = onScales.map((line) => asPremixed(facts, weighed, line))
  const asked = askedTotals(doses)
  return {
    position,
    name: arm.name,
    onTop: arm.onTop,
    outcome: balanced.outcome,
    doses: weighed.map(({ dose }) => dose),
    lines,
    totals: balanced.totals.map(({ total, isHeld, controlG, differenceG, differencePctFlour }) => ({
      total: heldTotalOf(total),
      isHeld:
        isHeld ||
        (!arm.onTop && facts.declared.heldTotals.some((held) => armTotals[held] === total) && !asked.includes(total)),
      controlG,
      differenceG,
      differencePctFlour,
    })),
    ...doughFacts(facts, control, lines, [
      ...weighed.flatMap((each, d) => doseWarnings(facts, control, each, lines, d)),
      ...warnings,
    ]),
  }
}

type WeighedDose = Omit<DrawnDose, 'dose'> & { dose: PlanDose }

function drawUpDose(
  facts: PlanFacts,
  control: ControlDough,
  asked: PlanFacts['arms'][number]['doses'][number],
  leftG: Map<string, number>,
): DrawnDose {
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
    },
  }
}

function weighingOf(
  facts: PlanFacts,
  control: ControlDough,
  lines: readonly PlanLine[],
  productG: number,
  d: number,
): PlanDose['weighing'] {
  const scaleId = lines.find(({ dose }) => dose === d)?.scaleId
  const scale = facts.scales.find(({ id }) => id === scaleId)
  if (!scale || !(productG > 0)) return null
  return weighingOfDose({
    productG,
    carrierG: carrierOf(lines, d)?.exactG ?? 0,
    flourG: control.flourG,
    scale,
    scales: facts.scales,
  })
}

/** A dose that goes in with a premix weighs what the portion brings of it, which its own scale need not be able to show. */
function asPremixed(facts: PlanFacts, doses: readonly WeighedDose[], line: PlanLine): PlanLine {
  const route = line.dose === null ? null : doses[line.dose]?.dose.weighing?.premix
  if (route?.outcome !== 'premix') return line
  const scale = facts.scales.find(({ id }) => id === route.portionScaleId)
  return {
    ...line,
    weighedG:
      roundToScaleG({ massG: route.portionG, resolutionG: resolutionOfLine(scale) }) *
      (route.steps.at(-1)?.productShare ?? 1),
    scaleId: route.portionScaleId,
  }
}

function doseWarnings(
  facts: PlanFacts,
  control: ControlDough,
  { dose, ingredient, insteadOf }: WeighedDose,
  lines: readonly PlanLine[],
  d: number,
): PlanWarning[] {
  const { name } = ingredient
  const found: PlanWarning[] = []
  const warn = (code: PlanWarning['code'], more: PlanWarning['facts'] = {}) =>
    found.push({ code, dose: d, facts: { ingredient: name, ...more } })
  if (ingredient.customary) {
    // What the dough has of it altogether counts, not what this dose adds.
    const totalG = lines
      .filter(({ ingredientId }) => ingredientId === ingredient.id)
      .reduce((sum, line) => sum + line.exactG, 0)
    const pct = (100 * totalG) / control.flourG
    const { leastPct, mostPct, source } = ingredient.customary
    if (pct > mostPct * (1 + 1e-9)) warn('above-customary', { pct, leastPct, mostPct, source })
    if (totalG > 0 && pct < leastPct * (1 - 1e-9)) warn('below-customary', { pct, leastPct, mostPct, source })
  }
  if (ingredient.composition === null && ingredient.kind !== 'water') warn('composition-unknown')
  if (dose.weighing && dose.weighing.errorPct > 100 * doseErrorLimitShare)
    warn('dose-coarse', { errorPct: dose.weighing.errorPct, leastG: dose.weighing.leastG })
  const line = lines.find((each) => each.dose === d)
  if (line?.weighedG === 0) warn('rounded-to-nothing')
  const binding = [ingredient, insteadOf].find((each) => each && bindsWater(each))
  if (binding) warn('water-to-consistency', { ingredient: binding.name })
  if (ingredient.dustCaution && dose.productG > 0) warn('dust')
  if (ingredient.isEnded) warn('ingredient-ended')
  return found
}

type DoughFacts = Pick<
  PlanArm,
  'doughG' | 'doughWeighedG' | 'allergens' | 'addedAllergens' | 'uncheckedIngredients' | 'water' | 'warnings'
>

function doughFacts(
  facts: PlanFacts,
  control: ControlDough,
  lines: readonly PlanLine[],
  warnings: readonly PlanWarning[],
): DoughFacts {
  const byId = new Map(facts.ingredients.map((ingredient) => [ingredient.id, ingredient]))
  const ingredientsOf = (some: readonly { ingredientId: string }[]) =>
    [...new Set(some.map(({ ingredientId }) => ingredientId))].flatMap((id) => byId.get(id) ?? [])
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
        const resolutionG = resolutionOfLine(facts.scales.find(({ id }) => id === line.scaleId))
        return ingredient ? [{ ingredient, isFinalDough, massG: line.weighedG, resolutionG }] : []
      }),
      declared: facts.declared,
      process: facts.process,
      mixer: facts.mixer,
      waters: facts.waters,
    }),
    warnings: [
      ...warnings,
      ...(addedAllergens.length > 0
        ? [{ code: 'allergen-added' as const, dose: null, facts: { allergens: addedAllergens.join(',') } }]
        : []),
      ...unchecked.map(
        ({ name }): PlanWarning => ({ code: 'allergen-unchecked', dose: null, facts: { ingredient: name } }),
      ),
      ...mixerWarnings(facts, doughG),
      ...rangeWarnings(facts, lines),
    ],
  }
}

function allergensOf(ingredients: readonly PlanIngredient[]): Allergen[] {
  return [...new Set(ingredients.flatMap(({ allergens }) => allergens))].sort()
}

function mixerWarnings({ mixer }: PlanFacts, doughG: number): PlanWarning[] {
  if (mixer && doughG < mixer.leastG)
    return [{ code: 'mixer-below', dose: null, facts: { mixer: mixer.name, doughG, leastG: mixer.leastG } }]
  if (mixer && doughG > mixer.mostG)
    return [{ code: 'mixer-above', dose: null, facts: { mixer: mixer.name, doughG, mostG: mixer.mostG } }]
  return []
}

/** Lines that no scale is made for: heavier than the largest carries, or lighter than the least load of any. */
function rangeWarnings(facts: PlanFacts, lines: readonly PlanLine[]): PlanWarning[] {
  return lines.flatMap((line, l): PlanWarning[] => {
    const together = lines.filter(
      (other) =>
        other.stageId === line.stageId && other.ingredientId === line.ingredientId && other.scaleId === line.scaleId,
    )
    const scale = facts.scales.find(({ id }) => id === line.scaleId)
    const massG = together.reduce((sum, { exactG }) => sum + exactG, 0)
    if (!scale || together[0] !== lines[l] || !(massG > 0)) return []
    const dose = together.find((each) => each.dose !== null)?.dose ?? null
    const stageKind = facts.stages.find(({ id }) => id === line.stageId)?.kind
    if (stageKind && chosenScale(facts, { stageKind, ingredientId: line.ingredientId })?.id === scale.id)
      return chosenScaleWarnings(facts, scale, line.ingredient, together)
    if (massG > scale.mostG)
      return [{ code: 'above-scale', dose, facts: { ingredient: line.ingredient, mostG: scale.mostG } }]
    if (massG < (scale.leastG ?? 0))
      return [{ code: 'below-scale', dose, facts: { ingredient: line.ingredient, leastG: scale.leastG ?? 0 } }]
    return []
  })
}

/** Where a scale that somebody chose is a poor choice: it cannot carry the load, or is further off than another would be. */
function chosenScaleWarnings(
  facts: PlanFacts,
  scale: PlanScale,
  ingredient: string,
  together: readonly PlanLine[],
): PlanWarning[] {
  const { massG, tellG } = loadOf(together)
  const dose = together.find((each) => each.dose !== null)?.dose ?? null
  const named = { ingredient, scale: scale.name }
  if (massG > scale.mostG) return [{ code: 'chosen-scale-above', dose, facts: { ...named, mostG: scale.mostG } }]
  const found: PlanWarning[] =
    massG < (scale.leastG ?? 0)
      ? [{ code: 'chosen-scale-below', dose, facts: { ...named, leastG: scale.leastG ?? 0 } }]
      : []
  const errorPctOn = (one: PlanScale) =>
    100 * relativeDoseErrorShare({ netMassG: tellG, ...spreadOf(one), coverageFactor: 2 })
  const other = scaleByRule(facts, together)
  const errorPct = errorPctOn(scale)
  if (!other || errorPct <= 100 * preferredErrorShare || errorPctOn(other) >= errorPct) return found
  return [
    ...found,
    {
      code: 'chosen-scale-coarse',
      dose,
      facts: { ...named, errorPct, other: other.name, otherErrorPct: errorPctOn(other) },
    },
  ]
}
