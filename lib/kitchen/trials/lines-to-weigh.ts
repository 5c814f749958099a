import 'server-only'
import { roundToScaleG } from '../../calc/weighing/round-to-scale'
import type { IngredientKind, StageKind } from '../../db/generated/enums'
import type { Plan, PlanArm, PlanLine, PlanScale } from './plan-types'
import { resolutionOfLine } from './resolution-of-line'

/** One thing to put on a scale. */
export type LineToWeigh = {
  /** Of an ingredient in a stage on a scale. */
  key: string
  stageId: string
  ingredientId: string
  ingredient: string
  kind: IngredientKind
  /** What the scale is to show, g. */
  weighedG: number
  /** Steps of its scale, g. */
  resolutionG: number
  scale: ScaleNamed | null
  /** What the sum is made of, where it is more than one: what is the formula's and what is the dose. */
  parts: { isDose: boolean; massG: number }[]
  isDosed: boolean
  /** This is so much of a premix that holds the dose, and not the ingredient itself. */
  isPremix: boolean
}

/** A mass and the scale that it goes on; none where no scale is known. */
export type OnScale = { massG: number; resolutionG: number; scale: ScaleNamed | null }
export type ScaleNamed = { id: string; name: string }

/** How a dose is brought within reach of the scales: mixed step by step into flour, of which a part goes into the dough. */
export type PremixToMake = {
  ingredient: string
  /** The flour that it is mixed into, and that so much less is weighed of. */
  carrier: string
  /** Each step mixes some of the product, and from the second on of the premix before, into flour. */
  steps: { take: OnScale; carrier: OnScale; totalG: number }[]
  portion: OnScale
  carrierLessG: number
  /** How many doughs it is enough for. */
  doughs: number
}

export type ToWeigh = {
  stages: { id: string; kind: StageKind; name: string; lines: LineToWeigh[] }[]
  premixes: PremixToMake[]
  totalG: number
  /** The finest steps among the lines, in which their sum is written. */
  totalResolutionG: number
  /** More than one scale is used, so each line says which. */
  hasSeveralScales: boolean
}

/**
 * What goes on the scales for one dough, stage by stage. The same ingredient twice in a stage is one line with one sum
 * and its parts. Where the plan asks for a premix, the dose's line is the portion of that, and the flour that comes
 * with it is off the flour's line, so that whoever weighs line by line weighs each gram once.
 */
export function linesToWeigh(plan: Pick<Plan, 'stages' | 'scales'>, arm: Pick<PlanArm, 'lines' | 'doses'>): ToWeigh {
  const scales = new Map(plan.scales.map((scale) => [scale.id, scale]))
  const made = arm.doses.map((_, d) => premixOf(scales, arm, d))
  const premixes = made.flatMap((one) => one ?? [])
  const stages = plan.stages
    .map((stage) => ({
      ...stage,
      lines: linesOfStage(
        scales,
        arm.lines.filter(({ stageId }) => stageId === stage.id),
        made,
      ),
    }))
    .filter(({ lines }) => lines.length > 0)
  const lines = stages.flatMap((stage) => stage.lines)
  const used = [
    ...lines,
    ...premixes.flatMap(({ toMake: { steps } }) => steps.flatMap(({ take, carrier }) => [take, carrier])),
  ].map(({ scale }) => scale?.id)
  return {
    stages,
    premixes: premixes.map(({ toMake }) => toMake),
    totalG: sum(lines.map(({ weighedG }) => weighedG)),
    totalResolutionG: Math.min(...lines.map(({ resolutionG }) => resolutionG)),
    hasSeveralScales: new Set(used).size > 1,
  }
}

type Premixed = { dose: number; carrierLine: PlanLine; toMake: PremixToMake }

/** The premix of one dose, and the flour line that gives way to it. */
function premixOf(
  scales: ReadonlyMap<string, PlanScale>,
  arm: Pick<PlanArm, 'lines' | 'doses'>,
  d: number,
): Premixed | null {
  const dose = arm.doses[d]
  const route = dose?.weighing?.premix
  const carrierLine = carrierOf(arm.lines, d)
  if (!dose || route?.outcome !== 'premix' || !carrierLine) return null
  const weighing = (massG: number, scaleId: string): OnScale => ({ massG, ...onScale(scales, scaleId) })
  const portion = weighing(route.portionG, route.portionScaleId)
  const portionG = roundToScaleG({ massG: route.portionG, resolutionG: portion.resolutionG })
  const last = route.steps.at(-1)
  return {
    dose: d,
    carrierLine,
    toMake: {
      ingredient: dose.ingredient,
      carrier: carrierLine.ingredient,
      steps: route.steps.map((step) => ({
        take: weighing(step.takeG, step.takeScaleId),
        carrier: weighing(step.carrierG, step.carrierScaleId),
        totalG: step.totalG,
      })),
      portion: { ...portion, massG: portionG },
      carrierLessG: portionG * (1 - (last?.productShare ?? 1)),
      doughs: Math.max(1, Math.floor((last?.totalG ?? 0) / portionG + 1e-9)),
    },
  }
}

/** The flour that a premix is made in: the largest line of flour in the dose's stage; none where there is no flour. */
export function carrierOf(lines: readonly PlanLine[], d: number): PlanLine | null {
  const stageId = lines.find(({ dose }) => dose === d)?.stageId
  const flours = lines.filter((line) => line.stageId === stageId && line.kind === 'flour' && line.dose === null)
  return flours.reduce<PlanLine | null>(
    (most, line) => (most === null || line.exactG > most.exactG ? line : most),
    null,
  )
}

function linesOfStage(
  scales: ReadonlyMap<string, PlanScale>,
  lines: readonly PlanLine[],
  made: readonly (Premixed | null)[],
): LineToWeigh[] {
  const premixOfLine = ({ dose }: PlanLine) => (dose === null ? null : (made[dose] ?? null))
  const keyOf = (line: PlanLine) =>
    [line.stageId, line.ingredientId, premixOfLine(line) ? 'premix' : (line.scaleId ?? '')].join(' ')
  return [...new Set(lines.map(keyOf))].flatMap((key): LineToWeigh[] => {
    const together = lines.filter((line) => keyOf(line) === key)
    const [first] = together
    if (!first) return []
    const { stageId, ingredientId, ingredient, kind } = first
    const shared = { key, stageId, ingredientId, ingredient, kind, isDosed: together.some(({ dose }) => dose !== null) }
    const portions = together.flatMap((line) => premixOfLine(line)?.toMake.portion ?? [])
    const [portion] = portions
    if (portion)
      return [
        {
          ...shared,
          scale: portion.scale,
          resolutionG: portion.resolutionG,
          weighedG: sum(portions.map(({ massG }) => massG)),
          parts: [],
          isPremix: true,
        },
      ]
    const { scale, resolutionG } = onScale(scales, first.scaleId)
    const lessG = sum(
      made.flatMap((one) => (one && together.includes(one.carrierLine) ? [one.toMake.carrierLessG] : [])),
    )
    const weighedG = sum(together.map((line) => line.weighedG))
    return [
      {
        ...shared,
        scale,
        resolutionG,
        weighedG: lessG > 0 ? roundToScaleG({ massG: Math.max(0, weighedG - lessG), resolutionG }) : weighedG,
        parts:
          together.length > 1 ? together.map((line) => ({ isDose: line.dose !== null, massG: line.weighedG })) : [],
        isPremix: false,
      },
    ]
  })
}

function onScale(scales: ReadonlyMap<string, PlanScale>, scaleId: string | null): Omit<OnScale, 'massG'> {
  const scale = scaleId === null ? undefined : scales.get(scaleId)
  return { resolutionG: resolutionOfLine(scale), scale: scale ? { id: scale.id, name: scale.name } : null }
}

/** Free of binary dust: 0.1 and 0.2 are 0.3. */
function sum(masses: readonly number[]): number {
  return Number(masses.reduce((total, massG) => total + massG, 0).toPrecision(12))
}
