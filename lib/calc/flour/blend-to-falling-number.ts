import { mustBeWithin } from '../checks'
import { CalcError } from '../error'
import { liquefactionNumber } from './liquefaction-number'

/**
 * Two flours blended to a falling number, by liquefaction numbers. An estimate: measure the blend.
 * @param firstFallingNumberS, secondFallingNumberS, wantedFallingNumberS 60 to 2000 s; the wanted one between the others
 * @param massG of the blend, g, > 0
 * @throws CalcError 'not-finite' | 'out-of-range'; 'not-possible' with reason 'falling-number-below-60', 'same-figure' or
 *   'not-between'
 * Source: US seed-company agronomist, 2020, after USDA grain inspection.
 * @example 400 and 220 s to 300 s: 62.222 % of the first, 37.778 % of the second
 */
export function blendToFallingNumber(q: {
  firstFallingNumberS: number
  secondFallingNumberS: number
  wantedFallingNumberS: number
  massG: number
}): {
  wantedLiquefactionNumber: number
  firstPartPct: number
  secondPartPct: number
  firstMassG: number
  secondMassG: number
} {
  const first = liquefactionNumber('firstFallingNumberS', q.firstFallingNumberS)
  const second = liquefactionNumber('secondFallingNumberS', q.secondFallingNumberS)
  const wanted = liquefactionNumber('wantedFallingNumberS', q.wantedFallingNumberS)
  mustBeWithin('massG', q.massG, { over: 0 })
  if (q.firstFallingNumberS === q.secondFallingNumberS) {
    throw new CalcError('not-possible', {
      field: 'secondFallingNumberS',
      value: q.secondFallingNumberS,
      reason: 'same-figure',
    })
  }
  if (wanted < Math.min(first, second) || wanted > Math.max(first, second)) {
    throw new CalcError('not-possible', {
      field: 'wantedFallingNumberS',
      value: q.wantedFallingNumberS,
      reason: 'not-between',
    })
  }
  const share = (wanted - second) / (first - second)
  return {
    wantedLiquefactionNumber: wanted,
    firstPartPct: 100 * share,
    secondPartPct: 100 * (1 - share),
    firstMassG: q.massG * share,
    secondMassG: q.massG * (1 - share),
  }
}
