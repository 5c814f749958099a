import { mustBeGiven, mustBeWithin } from '../checks'
import { CalcError } from '../error'
import { atMoistureBasisPct } from '../formula/at-moisture-basis'

export type FlourBlend = {
  firstAtBasisPct: number
  secondAtBasisPct: number
  /** On the stated basis: of flour as it is, or of flour at that moisture. */
  firstPartPct: number
  firstMassG: number
  secondMassG: number
}

/**
 * Two flours blended to a protein, an ash or any figure that adds up by mass. Figures of different moistures are only
 * comparable on one basis, and so the answer says on which one it is; masses are as weighed, at each flour's own moisture.
 * @param firstPct, secondPct figure of each flour at its own moisture, %, 0 to 100; @param wantedPct on the basis
 * @param basis 'as-is' takes the figures as they are; 'moisture' restates them at `basisMoisturePct` (14; 0 is dry matter)
 * @param firstMoisturePct, secondMoisturePct, basisMoisturePct 0 to below 100; needed for 'moisture'
 * @param massG of the blend: as it is, or at that moisture; g, > 0
 * @throws CalcError 'not-finite' | 'out-of-range'; 'not-possible' with reason 'not-given', 'same-figure' or 'not-between'
 * Source: mass balance (alligation).
 * @example 13.2 % at 12.8 % moisture and 10.4 % at 14.6 % to 12.0 % at 14 %: 59.991 % of the first
 */
export function blendToFigure(q: {
  firstPct: number
  secondPct: number
  wantedPct: number
  basis: 'as-is' | 'moisture'
  basisMoisturePct?: number | undefined
  firstMoisturePct?: number | undefined
  secondMoisturePct?: number | undefined
  massG: number
}): FlourBlend {
  const first = flourAtBasis('first', q)
  const second = flourAtBasis('second', q)
  mustBeWithin('massG', q.massG, { over: 0 })
  const wanted = mustBeWithin('wantedPct', q.wantedPct, { min: 0, max: 100 })
  if (Math.abs(first.pct - second.pct) <= 1e-9 * Math.max(first.pct, second.pct)) {
    throw new CalcError('not-possible', { field: 'secondPct', value: q.secondPct, reason: 'same-figure' })
  }
  const [min, max] = [Math.min(first.pct, second.pct), Math.max(first.pct, second.pct)]
  if (wanted < min || wanted > max)
    throw new CalcError('not-possible', { field: 'wantedPct', value: wanted, min, max, reason: 'not-between' })
  const share = (wanted - second.pct) / (first.pct - second.pct)
  return {
    firstAtBasisPct: first.pct,
    secondAtBasisPct: second.pct,
    firstPartPct: 100 * share,
    firstMassG: q.massG * share * first.weighedPerBasis,
    secondMassG: q.massG * (1 - share) * second.weighedPerBasis,
  }
}

function flourAtBasis(
  which: 'first' | 'second',
  q: Parameters<typeof blendToFigure>[0],
): { pct: number; weighedPerBasis: number } {
  const pct = mustBeWithin(`${which}Pct`, q[`${which}Pct`], { min: 0, max: 100 })
  if (q.basis === 'as-is') return { pct, weighedPerBasis: 1 }
  const dryest = { min: 0, under: 100 }
  const basisPct = mustBeWithin('basisMoisturePct', mustBeGiven('basisMoisturePct', q.basisMoisturePct), dryest)
  const field = `${which}MoisturePct` as const
  const moisturePct = mustBeWithin(field, mustBeGiven(field, q[field]), dryest)
  return {
    pct: atMoistureBasisPct({ valuePct: pct, moisturePct, basisPct }),
    weighedPerBasis: (100 - basisPct) / (100 - moisturePct),
  }
}
