import { mustBeWithin } from '../checks'
import { CalcError } from '../error'

/** The reading includes 60 s of stirring, so no flour reads less. */
const LEAST_S = 60

/** Longer than any flour reads; beyond it a reading says nothing of the enzymes. */
const MOST_S = 2000

/**
 * Liquefaction number of a falling number: 6000 / (FN − 50). It adds up by mass; seconds do not.
 * @param fallingNumberS as read, s, 60 to 2000
 * @throws CalcError 'not-finite' | 'out-of-range'; 'not-possible' with reason 'falling-number-below-60'
 * Source: US seed-company agronomist, 2020, after USDA grain inspection; the 60 s: baking questions and answers on the web.
 * @example 400 s: 17.14; 220 s: 35.29
 */
export function liquefactionNumber(field: string, fallingNumberS: number): number {
  mustBeWithin(field, fallingNumberS, { min: 0, max: MOST_S })
  if (fallingNumberS < LEAST_S) {
    throw new CalcError('not-possible', {
      field,
      value: fallingNumberS,
      min: LEAST_S,
      reason: 'falling-number-below-60',
    })
  }
  return 6000 / (fallingNumberS - 50)
}
