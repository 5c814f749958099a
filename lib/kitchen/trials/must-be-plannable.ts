import 'server-only'
import type { Db, Tx } from '../../db/client'
import type { EquipmentKind, Figure, IngredientKind } from '../../db/generated/enums'
import { nutrientShare } from '../../calc/formula/nutrient-share'
import { compositionOf } from '../stores/composition-of'
import { hasTrueZero } from '../stores/has-true-zero'
import { versionInProduction } from '../formulas/version-in-production'
import { Refusal, type Problem } from '../refusal'
import { compositionOrWater } from './as-arm-line'
import type { TrialContent } from './trial-content.input'

/** Product on flour, %, above which a dose of an active substance cannot be meant. */
const mostProductPct = 200

/**
 * Demands that everything a trial names is this bakery's, in use and fit for it; all faults at once. What is another
 * bakery's is not there.
 * @param at where the content stands in the input: its problems begin with that
 * @returns the version in production now, which is the control
 */
export async function mustBePlannable(
  from: Db | Tx,
  bakeryId: string,
  content: TrialContent,
  now: Date,
  at: string,
): Promise<{ controlVersionId: string }> {
  const problems: Problem[] = []
  const fault = (path: string, code: Problem['code']) => problems.push({ path: `${at}${path}`, code, facts: {} })

  const formula = await from.formula.findUnique({
    where: { bakeryId_id: { bakeryId, id: content.formulaId } },
    select: { id: true },
  })
  const version = formula && (await versionInProduction(from, bakeryId, formula.id, now))
  if (!formula) fault('formulaId', 'wrong-choice')
  else if (!version) fault('formulaId', 'nothing-in-production')

  const measure = await from.measure.findUnique({
    where: { bakeryId_id: { bakeryId, id: content.measureId } },
    select: { direction: true, endedAt: true, level: true, unit: true, plausibleLeast: true },
  })
  if (!measure || measure.endedAt) fault('measureId', 'wrong-choice')
  else if (measure.direction === 'none' && content.kind === 'gain') fault('measureId', 'measure-without-direction')
  else if (measure.level === 'batch' && content.factor) fault('measureId', 'measure-not-of-pieces')
  else if (content.marginUnit === 'pct' && !hasTrueZero(measure)) fault('marginUnit', 'pct-without-zero')

  if (content.tapTempC === null && !(await isTapKnown(from, bakeryId))) fault('tapTempC', 'no-tap')
  for (const [field, kind] of [
    ['scaleId', 'scale'],
    ['mixerId', 'mixer'],
  ] as const) {
    const id = content[field]
    if (id !== null && !(await isEquipmentInUse(from, bakeryId, id, kind))) fault(field, 'wrong-choice')
  }

  const ids = [
    ...new Set(
      content.arms.flatMap((arm) =>
        arm.doses.flatMap(({ ingredientId, insteadOfId }) => [
          ingredientId,
          ...(insteadOfId === null ? [] : [insteadOfId]),
        ]),
      ),
    ),
  ]
  const found = await from.ingredient.findMany({
    where: { bakeryId, id: { in: ids } },
    select: {
      id: true,
      kind: true,
      endedAt: true,
      activeShare: true,
      figures: { select: { figure: true, gPer100G: true } },
    },
  })
  const byId = new Map(found.map((ingredient) => [ingredient.id, ingredient]))
  const held = version ? await heldByControl(from, bakeryId, version.id) : []
  content.arms.forEach((arm, a) => {
    const left = new Map(
      held
        .filter(({ isFinalDough }) => isFinalDough)
        .map(({ ingredientId }) => [ingredientId, pctOf(held, ingredientId, true)]),
    )
    arm.doses.forEach((dose, d) => {
      const ingredient = byId.get(dose.ingredientId)
      const path = `arms.${a}.doses.${d}`
      if (!ingredient) fault(`${path}.ingredientId`, 'wrong-choice')
      else if (ingredient.endedAt) fault(`${path}.ingredientId`, 'ingredient-ended')
      else if (dose.doseOf === 'active' && ingredient.activeShare === null) fault(`${path}.doseOf`, 'no-active-stated')
      else if (
        dose.doseOf === 'active' &&
        ingredient.activeShare !== null &&
        pctFlour(dose) / ingredient.activeShare > mostProductPct
      )
        fault(`${path}.value`, 'dose-too-large')
      else if (version) {
        const outOf = dose.how === 'in_place' ? dose.insteadOfId : dose.ingredientId
        const asked = pctFlour(dose) / (dose.doseOf === 'active' ? (ingredient.activeShare ?? 1) : 1)
        const there = outOf === null ? 0 : (left.get(outOf) ?? 0)
        const more =
          dose.how === 'in_all'
            ? asked - pctOf(held, dose.ingredientId, false)
            : dose.how === 'in_place'
              ? -(dose.allOfIt ? there : asked)
              : asked
        const insteadOf = dose.insteadOfId === null ? null : byId.get(dose.insteadOfId)
        if (insteadOf === undefined) fault(`${path}.insteadOfId`, 'wrong-choice')
        else if (outOf === null) return
        else if (dose.allOfIt && there < slackPct) fault(`${path}.insteadOfId`, 'control-has-none')
        else if (Math.abs(more) < slackPct) fault(`${path}.value`, 'dose-changes-nothing')
        else if (-more > there + slackPct) fault(`${path}.value`, 'control-has-less')
        else if (insteadOf && dose.equalBy && !isStated(dose.equalBy, ingredient, insteadOf))
          fault(`${path}.equalBy`, 'not-stated-by-both')
        else if (more < 0) left.set(outOf, there + more)
      }
    })
  })
  if (problems.length > 0 || !version) throw new Refusal('invalid', {}, problems)
  return { controlVersionId: version.id }
}

/** Percentages on flour nearer than this are the same. */
const slackPct = 1e-9

type HeldLine = { ingredientId: string; pctFlour: number; isFinalDough: boolean }

async function heldByControl(from: Db | Tx, bakeryId: string, versionId: string): Promise<HeldLine[]> {
  const lines = await from.formulaLine.findMany({
    where: { bakeryId, versionId },
    select: { ingredientId: true, pctFlour: true, stage: { select: { kind: true } } },
  })
  return lines.map(({ stage, ...line }) => ({ ...line, isFinalDough: stage.kind === 'final_dough' }))
}

/** What the control has of an ingredient, % on flour: in all, or in its final dough, where alone lines can be lowered. */
function pctOf(held: readonly HeldLine[], ingredientId: string, inFinalDough: boolean): number {
  return held.reduce(
    (sum, line) =>
      sum + (line.ingredientId === ingredientId && (line.isFinalDough || !inFinalDough) ? line.pctFlour : 0),
    0,
  )
}

type Described = { kind: IngredientKind; activeShare: number | null; figures: { figure: Figure; gPer100G: number }[] }

/** Whether both ingredients say how much they have of what is to stay equal, and have some. */
function isStated(
  equalBy: NonNullable<TrialContent['arms'][number]['doses'][number]['equalBy']>,
  ...both: Described[]
): boolean {
  if (equalBy === 'mass') return true
  return both.every(({ kind, activeShare, figures }) =>
    equalBy === 'active'
      ? activeShare !== null
      : (nutrientShare(compositionOrWater({ kind, composition: compositionOf(figures) }), equalBy) ?? 0) > 0,
  )
}

function pctFlour({
  basis,
  value,
}: {
  basis: TrialContent['arms'][number]['doses'][number]['basis']
  value: number
}): number {
  switch (basis) {
    case 'pct_flour':
      return value
    case 'g_per_kg_flour':
      return value / 10
    case 'ppm_flour':
      return value / 10_000
    default:
      return basis satisfies never
  }
}

async function isEquipmentInUse(from: Db | Tx, bakeryId: string, id: string, kind: EquipmentKind): Promise<boolean> {
  return (await from.equipment.count({ where: { bakeryId, id, kind, endedAt: null } })) === 1
}

async function isTapKnown(from: Db | Tx, bakeryId: string): Promise<boolean> {
  return (await from.equipment.count({ where: { bakeryId, kind: 'tap_water', endedAt: null } })) > 0
}
