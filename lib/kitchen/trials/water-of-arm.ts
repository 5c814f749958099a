import 'server-only'
import { WATER_SPECIFIC_HEAT_J_PER_G_K } from '../../calc/temperature/constants'
import type { HeatPart } from '../../calc/temperature/heat-of-parts'
import { requiredWaterTemp } from '../../calc/temperature/required-water-temp'
import type { PlanDeclared, PlanIngredient, PlanMixer, PlanProcess, PlanWater, PlanWaters } from './plan-types'
import { specificHeatOf } from './specific-heat-of'
import { wayOfWater } from './way-of-water'

/** Rise by mixing where the mixer does not say, °C per minute. A guess: common practice, no source. */
export const guessedFrictionCPerMin = 1
/** A rise above this is no dough's; the heat balance does not take it. */
export const mostRiseC = 40
/** Above this part of the dough, guessed specific heats make the whole a guess. */
export const mostGuessedShare = 0.05

export type HeatLine = { ingredient: PlanIngredient; isFinalDough: boolean; massG: number; resolutionG: number }

/**
 * Temperature of the mixing water of one dough by heat balance, and what to make it of. Flour of the final dough is at
 * the flour's temperature; pre-ferments and everything else are at the room's. Where no water does it, the dough's own
 * temperature with the nearest is said, by the same balance.
 */
export function waterOfArm(q: {
  lines: readonly HeatLine[]
  declared: Pick<PlanDeclared, 'flourTempC' | 'roomTempC' | 'tapTempC'>
  process: Pick<PlanProcess, 'doughTempC' | 'mixTimeS'>
  mixer: PlanMixer | null
  waters: PlanWaters
}): PlanWater {
  const { declared, process, mixer } = q
  const isMixingWater = (line: HeatLine) => line.isFinalDough && line.ingredient.kind === 'water'
  const mixingWater = q.lines.filter(isMixingWater)
  const waterG = mixingWater.reduce((sum, line) => sum + line.massG, 0)
  if (!(waterG > 0)) return { outcome: 'no-plain-water' }
  const frictionC = (mixer?.frictionCPerMin ?? guessedFrictionCPerMin) * (process.mixTimeS / 60)
  if (frictionC > mostRiseC) return { outcome: 'friction-too-high' }

  let guessedG = 0
  const parts = q.lines
    .filter((line) => !isMixingWater(line))
    .map((line): HeatPart => {
      const tempC = line.isFinalDough && line.ingredient.kind === 'flour' ? declared.flourTempC : declared.roomTempC
      const { isGuess, ...heat } = specificHeatOf(line.ingredient, tempC)
      if (isGuess) guessedG += line.massG
      return { massG: line.massG, tempC, ...heat }
    })
  const doughG = q.lines.reduce((sum, line) => sum + line.massG, 0)
  const { waterTempC, heatCapacityJPerK } = requiredWaterTemp({
    doughTempC: process.doughTempC,
    parts,
    bowl: null,
    waterMassG: waterG,
    friction: { by: 'rise', riseC: frictionC },
    roomHeatJ: 0,
  })
  const resolutionG = Math.max(...mixingWater.map((line) => line.resolutionG))
  const way = wayOfWater({
    waterG,
    wantedTempC: waterTempC,
    tapTempC: declared.tapTempC,
    waters: q.waters,
    resolutionG,
  })
  const isGuess = (mixer?.frictionCPerMin ?? null) === null || guessedG > mostGuessedShare * doughG
  const known = { outcome: 'known' as const, waterTempC, waterG, resolutionG, isGuess, frictionC }
  if (way.outcome === 'mix') return { ...known, way }
  const doughTempC =
    process.doughTempC + ((way.nearestTempC - waterTempC) * waterG * WATER_SPECIFIC_HEAT_J_PER_G_K) / heatCapacityJPerK
  return { ...known, way: { ...way, doughTempC } }
}
