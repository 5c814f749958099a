import { mustBeWithin } from '../checks'

/**
 * A difference of temperature from °F to °C: × 5/9, without the 32 that a reading takes. Friction factors are differences.
 * @throws CalcError 'not-finite'
 * @example 26 °F of friction factor are 14.44 °C
 */
export function differenceFToC(differenceF: number): number {
  return (mustBeWithin('differenceF', differenceF) * 5) / 9
}
