import 'server-only'
import type { WaterSource } from '../../calc/temperature/water-source'
import { planFormat, type Plan, type PlanArm, type PlanLine, type PlanWater, type WaterWay } from './plan-types'
import { resolutionOfLine } from './resolution-of-line'

type WaterOfFormat1 = Extract<PlanWater, { outcome: 'no-plain-water' | 'friction-too-high' }> | (Omit<Extract<PlanWater, { outcome: 'known' }>, 'way' | 'resolutionG'> & { source: WaterSource })
type ArmOfFormat1 = Omit<PlanArm, 'lines' | 'water'> & { lines: Omit<PlanLine, 'scaleId'>[]; water: WaterOfFormat1 }

/** A plan from when there was one scale for all lines, and the water was said as masses of cold, hot and ice. */
export type PlanOfFormat1 = Omit<Plan, 'format' | 'scales' | 'arms'> & { format: 1; arms: ArmOfFormat1[] }

/** The hot tap of that form, °C: nobody could write down another. */
const hotTapC = 55

/** Fills in what a plan of the first form leaves unsaid: the one scale of all its lines, and the temperatures of its waters. */
export function planOfFormat1(plan: PlanOfFormat1): Plan {
  const scaleId = plan.scale?.id ?? null
  return {
    ...plan,
    format: planFormat,
    scales: plan.scale ? [plan.scale] : [],
    arms: plan.arms.map((arm) => ({ ...arm, lines: arm.lines.map((line) => ({ ...line, scaleId })), water: waterOf(arm.water, plan) })),
  }
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
