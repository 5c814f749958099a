import { ACTIVITY_RISE_PCT_PER_C, YEAST_MAXIMUM_TEMP_C, YEAST_MINIMUM_TEMP_C, YEAST_OPTIMUM_TEMP_C } from './constants'
import { relativeRateShare } from './relative-rate'

export const SPEED_RULE_NAMES = ['q10-of-2', 'ten-pct-per-degree', 'cardinal-temperatures'] as const
export type SpeedRule = (typeof SPEED_RULE_NAMES)[number]

const yeast = {
  minimumTempC: YEAST_MINIMUM_TEMP_C,
  optimumTempC: YEAST_OPTIMUM_TEMP_C,
  maximumTempC: YEAST_MAXIMUM_TEMP_C,
}

/**
 * How fast a dough ferments at a temperature, by each rule in use; each on a scale of its own, so only ratios of one rule
 * mean anything. They agree near 25 °C and differ forty-fold in a retarder.
 * @param tempC −20 to 100 °C; the model gives 0 at and below 2.8 and at and above 45.4 °C
 * Source: Q10 of 2: common practice, no source; 10 % for one °C: US baking trade magazine; growth by cardinal temperatures:
 *   Rosso et al. (1993) with Salvado et al. (2011).
 */
export function speedBy(rule: SpeedRule, tempC: number): number {
  switch (rule) {
    case 'q10-of-2':
      return 2 ** (tempC / 10)
    case 'ten-pct-per-degree':
      return (1 + ACTIVITY_RISE_PCT_PER_C / 100) ** tempC
    case 'cardinal-temperatures':
      return relativeRateShare({ tempC, ...yeast })
    default: {
      const never: never = rule
      return never
    }
  }
}
