import 'server-only'
import { ICE_CONSTANTS } from '../../calc/temperature/ice-heat'
import { requiredWaterTemp, type HeatPart } from '../../calc/temperature/required-water-temp'
import { specificHeatJPerGK } from '../../calc/temperature/specific-heat'
import { waterSource } from '../../calc/temperature/water-source'
import type { IngredientKind } from '../../db/generated/enums'
import { compositionOrWater } from './as-arm-line'
import type { PlanDeclared, PlanIngredient, PlanMixer, PlanProcess, PlanWater } from './plan-types'

/** Rise by mixing where the mixer does not say, °C per minute. A guess: common practice, no source. */
export const guessedFrictionCPerMin = 1
/** A rise above this is no dough's; the heat balance does not take it. */
const mostRiseC = 40
/** Hot tap, hottest water on yeast, most ice that melts while mixing: common practice, no source. */
const hotTapC = 55
const mostWaterC = 40
const mostIceShare = 0.5
/** Above this part of the dough, guessed specific heats make the whole a guess. */
const mostGuessedShare = 0.05

/** Specific heats where the composition does not give them, J/(g·K), from memory: flour about 1.8, salt 0.86, moist things about 3. */
const usualSpecificHeats: Partial<Record<IngredientKind, number>> = { flour: 1.8, salt: 0.86, leaven: 3.2, dairy: 3.5, egg: 3.2 }
const otherSpecificHeat = 2

export type HeatLine = { ingredient: PlanIngredient; isFinalDough: boolean; massG: number }

/**
 * Temperature of the mixing water of one dough by heat balance, and how to get it from the tap. Flour of the final
 * dough is at the flour's temperature; pre-ferments and everything else are at the room's.
 */
export function waterOfArm(q: { lines: readonly HeatLine[]; declared: Pick<PlanDeclared, 'flourTempC' | 'roomTempC' | 'tapTempC'>; process: Pick<PlanProcess, 'doughTempC' | 'mixTimeS'>; mixer: PlanMixer | null }): PlanWater {
  const { declared, process, mixer } = q
  const isMixingWater = (line: HeatLine) => line.isFinalDough && line.ingredient.kind === 'water'
  const waterG = q.lines.filter(isMixingWater).reduce((sum, line) => sum + line.massG, 0)
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
      return { massG: line.massG, tempC, specificHeatJPerGK: known ?? usualSpecificHeats[line.ingredient.kind] ?? otherSpecificHeat }
    })
  const doughG = q.lines.reduce((sum, line) => sum + line.massG, 0)
  const { waterTempC } = requiredWaterTemp({
    doughTempC: process.doughTempC,
    parts,
    bowl: null,
    waterMassG: waterG,
    friction: { by: 'rise', riseC: frictionC },
    roomHeatJ: 0,
  })
  const source = waterSource({
    waterMassG: waterG,
    wantedTempC: waterTempC,
    coldTempC: declared.tapTempC,
    hotTempC: Math.max(hotTapC, declared.tapTempC),
    mostTempC: Math.max(mostWaterC, declared.tapTempC),
    iceTempC: 0,
    convention: 'replacing',
    mostIceShare,
    constants: ICE_CONSTANTS,
  })
  const isGuess = (mixer?.frictionCPerMin ?? null) === null || guessedG > mostGuessedShare * doughG
  return { outcome: 'known', waterTempC, waterG, source, isGuess, frictionC }
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
