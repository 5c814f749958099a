import { mustBeWithin } from '../checks'
import { CalcError } from '../error'
import { liquefactionNumber } from './liquefaction-number'

/**
 * Dose of a malt to a falling number, from one dose that was measured in the same flour. The liquefaction number is taken
 * to rise in proportion to the dose: a start, to be measured again.
 * @param fallingNumberS of the flour alone, s; @param triedFallingNumberS with the dose tried, s, lower
 * @param triedDosePctFlour % on flour, over 0 to 5; @param wantedFallingNumberS s, at most the flour's own; all 60 to 2000
 * @returns dose in % on flour; 'beyond-tried-dose' when it is more than was tried
 * @throws CalcError 'not-finite' | 'out-of-range'; 'not-possible' with reason 'falling-number-below-60', 'malt-without-effect'
 *   or 'malt-only-lowers'
 * Source: liquefaction number as blendFallingNumber; proportion to the dose: common practice, no source.
 * @example 350 s; 0.1 % gave 290; wanted 250: 0.2 %
 */
export function maltToFallingNumber(q: {
  fallingNumberS: number
  triedDosePctFlour: number
  triedFallingNumberS: number
  wantedFallingNumberS: number
}): { dosePctFlour: number; warnings: ('beyond-tried-dose' | 'check-with-flour')[] } {
  const alone = liquefactionNumber('fallingNumberS', q.fallingNumberS)
  const tried = liquefactionNumber('triedFallingNumberS', q.triedFallingNumberS)
  const wanted = liquefactionNumber('wantedFallingNumberS', q.wantedFallingNumberS)
  mustBeWithin('triedDosePctFlour', q.triedDosePctFlour, { over: 0, max: 5 })
  if (tried <= alone)
    throw new CalcError('not-possible', {
      field: 'triedFallingNumberS',
      value: q.triedFallingNumberS,
      reason: 'malt-without-effect',
    })
  if (wanted < alone)
    throw new CalcError('not-possible', {
      field: 'wantedFallingNumberS',
      value: q.wantedFallingNumberS,
      reason: 'malt-only-lowers',
    })
  const dosePctFlour = (q.triedDosePctFlour * (wanted - alone)) / (tried - alone)
  return {
    dosePctFlour,
    warnings:
      dosePctFlour > q.triedDosePctFlour * (1 + 1e-9)
        ? ['beyond-tried-dose', 'check-with-flour']
        : ['check-with-flour'],
  }
}
