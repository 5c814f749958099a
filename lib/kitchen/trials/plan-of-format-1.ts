import 'server-only'
import type { WaterSource } from '../../calc/temperature/water-source'
import type { DoseOfFormat2, PlanOfFormat2 } from './plan-of-format-2'
import type { PlanArm, PlanLine, PlanWater, WaterWay } from './plan-types'
import { resolutionOfLine } from './resolution-of-line'

type WaterOfFormat1 = Extract<PlanWater, { outcome: 'no-plain-water' | 'friction-too-high' }> | (Omit<Extract<PlanWater, { outcome: 'known' }>, 'way' | 'resolutionG'> & { source: WaterSource })
type DoseOfFormat1 = Omit<DoseOfFormat2, 'how' | 'insteadOfId' | 'insteadOf' | 'equalBy' | 'controlG' | 'inAllG' | 'removedG'>
type ArmOfFormat1 = Omit<PlanArm, 'lines' | 'water' | 'doses'> & { lines: Omit<PlanLine, 'scaleId'>[]; water: WaterOfFormat1; doses: DoseOfFormat1[] }

/**
 * A plan from when there was one scale for all lines, the water was said as masses of cold, hot and ice, and every dose
 * was so much more than the control.
 */
export type PlanOfFormat1 = Omit<PlanOfFormat2, 'format' | 'scales' | 'arms'> & { format: 1; arms: ArmOfFormat1[] }

/** The hot tap of that form, °C: nobody could write down another. */
const hotTapC = 55

/** Fills in what a plan of the first form leaves unsaid: the scale of each line, the temperatures of its waters, how each dose is meant. */
export function planOfFormat1(plan: PlanOfFormat1): PlanOfFormat2 {
  const scaleId = plan.scale?.id ?? null
  return {
    ...plan,
    format: 2,
    scales: plan.scale ? [plan.scale] : [],
    arms: plan.arms.map((arm) => ({
      ...arm,
      doses: arm.doses.map((dose) => doseOf(dose, arm.lines)),
      lines: arm.lines.map((line) => ({ ...line, scaleId })),
      water: waterOf(arm.water, plan),
    })),
  }
}

function doseOf(dose: DoseOfFormat1, lines: ArmOfFormat1['lines']): DoseOfFormat2 {
  const controlG = lines.reduce((sum, line) => sum + (line.ingredientId === dose.ingredientId ? line.controlG : 0), 0)
  return { ...dose, how: 'more', insteadOfId: null, insteadOf: null, equalBy: null, controlG, inAllG: controlG + dose.productG, removedG: 0 }
}

function waterOf(water: WaterOfFormat1, { declared, scale }: PlanOfFormat1): PlanWater {
  if (water.outcome !== 'known') return water
  const { source, ...rest } = water
  return { ...rest, resolutionG: resolutionOfLine(scale), way: wayOf(source, declared.tapTempC) }
}

function wayOf(source: WaterSource, tapTempC: number): WaterWay {
  if (source.outcome === 'not-possible') return { outcome: 'not-possible', reason: source.reason, nearestTempC: source.reachableTempC, parts: [], doughTempC: null }
  const parts = [
    { from: 'tap' as const, massG: source.coldMassG, tempC: tapTempC, isUsual: false },
    { from: 'hot' as const, massG: source.hotMassG, tempC: Math.max(hotTapC, tapTempC), isUsual: true },
    { from: 'ice' as const, massG: source.iceMassG, tempC: 0, isUsual: true },
  ]
  return { outcome: 'mix', parts: parts.filter(({ massG }) => massG > 0) }
}
