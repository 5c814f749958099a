import { mustBeWithin } from '../checks'

/**
 * What to buy for a mass that is needed ready, from a preparation that was weighed: needed / yield. Marking up by the loss
 * instead buys too little.
 * @param preparedFromG what was bought, g, > 0; @param preparedToG what was ready of it, g, over 0 to that
 * @param neededG ready, g, ≥ 0
 * @returns yield, %; mass to buy, g; and what would be ready of the same mass bought, g
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: W. Gisslen, Professional Cooking, as reproduced; Culinary Institute of America teaching pages.
 * @example yield 80 %: 12.5 to buy for 10 needed, and 8 ready of 10 bought
 */
export function massToBuy(q: { preparedFromG: number; preparedToG: number; neededG: number }): {
  usableYieldPct: number
  toBuyG: number
  readyOfSameG: number
} {
  mustBeWithin('preparedFromG', q.preparedFromG, { over: 0 })
  mustBeWithin('preparedToG', q.preparedToG, { over: 0, max: q.preparedFromG })
  mustBeWithin('neededG', q.neededG, { min: 0 })
  return {
    usableYieldPct: (100 * q.preparedToG) / q.preparedFromG,
    toBuyG: (q.neededG * q.preparedFromG) / q.preparedToG,
    readyOfSameG: (q.neededG * q.preparedToG) / q.preparedFromG,
  }
}
