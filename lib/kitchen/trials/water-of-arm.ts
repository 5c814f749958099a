import 'server-only'
import { WATER_SPECIFIC_HEAT_J_PER_G_K } from '../../calc/temperature/constants'
import type { HeatPart } from '../../calc/temperature/heat-of-parts'
import { requiredWaterTemp } from '../../calc/temperature/required-water-temp'
import { specificHeatJPerGK } from '../../calc/temperature/specific-heat'
import type { IngredientKind } from '../../db/generated/enums'
import { compositionOrWater } from './as-arm-line'
import type { PlanDeclared, PlanIngredient, PlanMixer, PlanProcess, PlanWater, PlanWaters } from './plan-types'
import { wayOfWater } from './way-of-water'

/** Rise by mixing where the mixer does not say, °C per minute. A guess: common practice, no source. */
const guessedFrictionCPerMin = 1
/** A rise above this is no dough's; the heat balance does not take it. */
const mostRiseC = 40
/** Above this part of the dough, guessed specific heats make the whole a guess. */
const mostGuessedShare = 0.05

/** Specific heats where the composition does not give them, J/(g·K), from memory: flour about 1.8, salt 0.86, moist things about 3. */
const usualSpecificHeats: Partial<Record<IngredientKind, number>> = {
  flour: 1.8,
  salt: 0.86,
  leaven: 3.2,
  dairy: 3.5,
  egg: 3.2,
}
const otherSpecificHeat = 2

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
      const known = knownSpecificHeat(line.ingredient, tempC)
      if (known === null) guessedG += line.massG
      return {
        massG: line.massG,
        tempC,
        specificHeatJPerGK: known ?? usualSpecificHeats[line.ingredient.kind] ?? otherSpecificHeat,
      }
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

/** From the composition, with ash as what is left of 100; null where a main part is not stated. */
function knownSpecificHeat(ingredient: PlanIngredient, tempC: number): number | null {
  const composition = compositionOrWater(ingredient)
  if (!composition) return null
  const { waterPct, proteinPct, fatPct, carbohydratePct } = composition
  if (waterPct === null || proteinPct === null || fatPct === null || carbohydratePct === null) return null
  const ashPct = composition.ashPct ?? Math.max(0, 100 - waterPct - proteinPct - fatPct - carbohydratePct)
  if (waterPct + proteinPct + fatPct + carbohydratePct + ashPct <= 0) return null
  return specificHeatJPerGK({ composition: { ...composition, ashPct }, tempC: Math.max(0, tempC) })
}
