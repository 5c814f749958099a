import { tolerableNegativeErrorG } from './tolerable-negative-error'

/**
 * How many packages hold less than nominal less the tolerable error (`belowLower`), and less than nominal less twice it
 * (`belowAbsolute`; such a package may not be sold under the mark). One just at a limit is not below it.
 * @param nominalG g, 5 to 15,000; contentsG net, g
 * @throws CalcError as tolerableNegativeErrorG
 * Source: Directive 76/211/EEC, Annex I, 1.
 */
export function countLight(q: { nominalG: number; contentsG: readonly number[] }): {
  belowLower: number
  belowAbsolute: number
} {
  const { lowerLimitG, absoluteLimitG } = tolerableNegativeErrorG(q)
  return {
    belowLower: q.contentsG.filter((contentG) => contentG < lowerLimitG).length,
    belowAbsolute: q.contentsG.filter((contentG) => contentG < absoluteLimitG).length,
  }
}
