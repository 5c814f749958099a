import 'server-only'
import { WATER_SPECIFIC_HEAT_J_PER_G_K } from '../../calc/temperature/constants'
import type { Figure, IngredientKind, StageKind } from '../../db/generated/enums'
import { compositionOf } from '../stores/composition-of'
import { isMixingWater } from '../trials/mixing-water'
import { specificHeatOf } from '../trials/specific-heat-of'
import { mostGuessedShare } from '../trials/water-of-arm'
import type { DoughHeat } from './tell-water.input'

type Line = {
  weighedG: number
  stage: { kind: StageKind }
  ingredient: { kind: IngredientKind; figures: readonly { figure: Figure; gPer100G: number }[] }
}

/**
 * How much heat a kg of a dough takes up, by whose temperature it has: flour of the final dough has the flour's, pre-ferments and
 * everything else the room's. Null where there is no plain water to set the temperature with.
 */
export function heatOfLines(
  lines: readonly Line[],
  at: { flourTempC: number; roomTempC: number },
): { heat: DoughHeat; doughG: number; isGuess: boolean } | null {
  const isFlour = ({ stage, ingredient }: Line) => stage.kind === 'final_dough' && ingredient.kind === 'flour'
  const massOf = (some: readonly Line[]) => some.reduce((sum, { weighedG }) => sum + weighedG, 0)
  const doughG = massOf(lines)
  const waterG = massOf(lines.filter(isMixingWater))
  if (!(waterG > 0) || !(doughG > waterG)) return null
  let guessedG = 0
  const jPerKOf = (some: readonly Line[], tempC: number) =>
    some.reduce((sum, { ingredient: { kind, figures }, weighedG }) => {
      const { specificHeatJPerGK, isGuess } = specificHeatOf({ kind, composition: compositionOf(figures) }, tempC)
      if (isGuess) guessedG += weighedG
      return sum + weighedG * specificHeatJPerGK
    }, 0)
  const ofAKg = (jPerK: number) => (1000 * jPerK) / doughG
  const rest = lines.filter((line) => !isMixingWater(line) && !isFlour(line))
  return {
    heat: {
      waterJPerK: ofAKg(waterG * WATER_SPECIFIC_HEAT_J_PER_G_K),
      flourJPerK: ofAKg(jPerKOf(lines.filter(isFlour), at.flourTempC)),
      restJPerK: ofAKg(jPerKOf(rest, at.roomTempC)),
    },
    doughG,
    isGuess: guessedG > mostGuessedShare * doughG,
  }
}
