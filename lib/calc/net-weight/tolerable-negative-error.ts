import { mustBeWithin } from '../checks'

/** Upper end of the range of nominal quantity, g, and the error there, by share of it or in g. */
const TABLE = [
  { upToG: 50, share: 0.09 },
  { upToG: 100, errorG: 4.5 },
  { upToG: 200, share: 0.045 },
  { upToG: 300, errorG: 9 },
  { upToG: 500, share: 0.03 },
  { upToG: 1000, errorG: 15 },
  { upToG: 10_000, share: 0.015 },
  { upToG: 15_000, errorG: 150 },
] as const

export type TolerableNegativeError = {
  errorG: number
  /** Nominal less the error: few packages may be below it. */
  lowerLimitG: number
  /** Nominal less twice the error: none may be below it. */
  absoluteLimitG: number
}

/**
 * How much less than its nominal quantity a prepackage may hold. Percentages are rounded up to a tenth of a gram.
 * @param nominalG quantity on the package, g, 5 to 15,000
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: Directive 76/211/EEC, Annex I, 2.4; above 1000 g and the rounding (2.5) from memory. Local rules decide.
 * @example 450 g: 13.5 g, limits 436.5 and 423
 */
export function tolerableNegativeErrorG(q: { nominalG: number }): TolerableNegativeError {
  const nominalG = mustBeWithin('nominalG', q.nominalG, { min: 5, max: 15_000 })
  const row = TABLE.find(({ upToG }) => nominalG <= upToG) ?? TABLE[TABLE.length - 1]!
  const errorG = 'share' in row ? upToTenth(row.share * nominalG) : row.errorG
  return { errorG, lowerLimitG: lessG(nominalG, errorG), absoluteLimitG: lessG(nominalG, 2 * errorG) }
}

/** A product that is a tenth but for binary dust stays that tenth. */
function upToTenth(errorG: number): number {
  return Math.ceil(Number((errorG * 10).toPrecision(12))) / 10
}

function lessG(nominalG: number, errorG: number): number {
  return Number((nominalG - errorG).toPrecision(14))
}
