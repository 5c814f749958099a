import { mustBeGiven, mustBeWithin } from '../checks'
import { CalcError } from '../error'
import { mustBeHydration } from './must-be-hydration'

export type Scald = {
  scaldFlourG: number
  scaldWaterG: number
  evaporatedG: number
  scaldMassG: number
  waterInScaldG: number
  doughFlourG: number
  doughWaterG: number
  /** How much drier the dough would be if nobody counted what boiled away: points of water on flour. */
  tooDryPctFlour: number
  cautions: ['boiling-water-burns']
}

type Question = {
  flourMassG: number
  doughHydrationPct: number
  scaldedPct: number
  scaldHydrationPct: number
  by: 'weighed' | 'expected-loss'
  scaldWeighedG?: number | undefined
  lossOfWaterPct?: number | undefined
}

/**
 * A scald within a dough, and the water that is left to add when some of it has boiled away: as weighed after, or as
 * expected while nothing is weighed yet.
 * @param flourMassG all flour of the dough with the scald's, g, > 0; @param doughHydrationPct all water on it, %, 0 to 1000
 * @param scaldedPct flour scalded, % of all, over 0 to 100; @param scaldHydrationPct water poured on it, %, over 0 to 1000
 * @param scaldWeighedG with 'weighed': the scald after, pot taken off, g: from its flour to flour and water together
 * @param lossOfWaterPct with 'expected-loss': % of the water poured on, 0 to 100
 * @throws CalcError 'not-finite' | 'out-of-range'; 'not-possible' with reason 'not-given' or 'not-enough-water'
 * Source: mass balance; only water evaporates.
 * @example 2000 g flour at 75 %, 10 % scalded with 250 %, 655 g after: 45 g gone, 1045 g water to add
 */
export function scald(q: Question): Scald {
  mustBeWithin('flourMassG', q.flourMassG, { over: 0 })
  mustBeHydration('doughHydrationPct', q.doughHydrationPct)
  mustBeWithin('scaldedPct', q.scaldedPct, { over: 0, max: 100 })
  mustBeWithin('scaldHydrationPct', q.scaldHydrationPct, { over: 0 })
  mustBeHydration('scaldHydrationPct', q.scaldHydrationPct)
  const scaldFlourG = (q.flourMassG * q.scaldedPct) / 100
  const scaldWaterG = (scaldFlourG * q.scaldHydrationPct) / 100
  const scaldMassG = massAfterG(q, scaldFlourG, scaldWaterG)
  const waterInScaldG = scaldMassG - scaldFlourG
  const doughWaterG = (q.flourMassG * q.doughHydrationPct) / 100 - waterInScaldG
  if (doughWaterG < -1e-9 * q.flourMassG) {
    throw new CalcError('not-possible', {
      field: 'scaldHydrationPct',
      value: q.scaldHydrationPct,
      reason: 'not-enough-water',
    })
  }
  return {
    scaldFlourG,
    scaldWaterG,
    evaporatedG: scaldWaterG - waterInScaldG,
    scaldMassG,
    waterInScaldG,
    doughFlourG: q.flourMassG - scaldFlourG,
    doughWaterG: Math.max(0, doughWaterG),
    tooDryPctFlour: (100 * (scaldWaterG - waterInScaldG)) / q.flourMassG,
    cautions: ['boiling-water-burns'],
  }
}

function massAfterG(q: Question, flourG: number, waterG: number): number {
  if (q.by === 'weighed')
    return mustBeWithin('scaldWeighedG', mustBeGiven('scaldWeighedG', q.scaldWeighedG), {
      min: flourG,
      max: flourG + waterG,
    })
  return (
    flourG +
    waterG *
      (1 - mustBeWithin('lossOfWaterPct', mustBeGiven('lossOfWaterPct', q.lossOfWaterPct), { min: 0, max: 100 }) / 100)
  )
}
