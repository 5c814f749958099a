import { YEAST_MINIMUM_TEMP_C, YEAST_OPTIMUM_TEMP_C } from './constants'

export const TEMP_WARNINGS = ['warmer-than-optimum', 'rules-differ-in-the-cold', 'colder-than-minimum'] as const
export type TempWarning = (typeof TEMP_WARNINGS)[number]

/** Below this, about, no rule is to be believed alone. */
const COLD_C = 8

/**
 * What is to be said of rules for the speed of yeast, from the coldest and the warmest temperature of a dough, °C.
 * @returns in the cold: that the range is all there is, never one number
 */
export function tempWarnings(coldestC: number, warmestC: number): TempWarning[] {
  const warnings: TempWarning[] = []
  if (warmestC > YEAST_OPTIMUM_TEMP_C) warnings.push('warmer-than-optimum')
  if (coldestC < COLD_C) warnings.push('rules-differ-in-the-cold')
  if (coldestC < YEAST_MINIMUM_TEMP_C) warnings.push('colder-than-minimum')
  return warnings
}
