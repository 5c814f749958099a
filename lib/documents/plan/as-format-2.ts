import 'server-only'
import type { PlanOfFormat1 } from './plan-of-format-1'
import type { PlanOfFormat2 } from './plan-of-format-2'

type ArmOfFormat1 = PlanOfFormat1['arms'][number]
type ArmOfFormat2 = PlanOfFormat2['arms'][number]
type KnownWater = Extract<ArmOfFormat1['water'], { outcome: 'known' }>
type Way = Extract<ArmOfFormat2['water'], { outcome: 'known' }>['way']

/** The hot tap of format 1, °C: nobody could write down another. */
const hotTapC = 55
/** To what masses were written where no scale was known, g. */
const withoutScaleG = 0.1

/** Fills in what a plan of format 1 leaves unsaid: the scale of each line, the temperatures of its waters, how each dose is meant. */
export function asFormat2(plan: PlanOfFormat1): PlanOfFormat2 {
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

function doseOf(dose: ArmOfFormat1['doses'][number], lines: ArmOfFormat1['lines']): ArmOfFormat2['doses'][number] {
  const controlG = lines.reduce((sum, line) => sum + (line.ingredientId === dose.ingredientId ? line.controlG : 0), 0)
  return {
    ...dose,
    how: 'more',
    insteadOfId: null,
    insteadOf: null,
    equalBy: null,
    controlG,
    inAllG: controlG + dose.productG,
    removedG: 0,
  }
}

function waterOf(water: ArmOfFormat1['water'], { declared, scale }: PlanOfFormat1): ArmOfFormat2['water'] {
  if (water.outcome !== 'known') return water
  const { source, ...rest } = water
  return { ...rest, resolutionG: scale?.resolutionG ?? withoutScaleG, way: wayOf(source, declared.tapTempC) }
}

function wayOf(source: KnownWater['source'], tapTempC: number): Way {
  if (source.outcome === 'not-possible')
    return {
      outcome: 'not-possible',
      reason: source.reason,
      nearestTempC: source.reachableTempC,
      parts: [],
      doughTempC: null,
    }
  const parts = [
    { from: 'tap' as const, massG: source.coldMassG, tempC: tapTempC, isUsual: false },
    { from: 'hot' as const, massG: source.hotMassG, tempC: Math.max(hotTapC, tapTempC), isUsual: true },
    { from: 'ice' as const, massG: source.iceMassG, tempC: 0, isUsual: true },
  ]
  return { outcome: 'mix', parts: parts.filter(({ massG }) => massG > 0) }
}
