import { mustBeWithin } from '../checks'
import { CalcError } from '../error'
import { mustBeHydration } from './must-be-hydration'

export type Scald = {
  evaporatedG: number
  scaldMassG: number
  waterInScaldG: number
  doughFlourG: number
  doughWaterG: number
  /** How much drier the dough would be if nobody weighed the scald: points of water on flour. */
  tooDryPctFlour: number
  cautions: ['boiling-water-burns']
}

/**
 * A scald within a dough, and the water that is left to add when some of it has boiled away.
 * @param flourMassG all flour of the dough with the scald's, g, > 0; @param doughHydrationPct all water on it, %, 0 to 1000
 * @param scaldFlourG flour scalded, g, over 0 and at most all; @param scaldWaterG water poured on it, g, > 0
 * @param scaldWeighedG what the scald weighed after, pot taken off, g: from its flour to flour and water together
 * @throws CalcError 'not-finite' | 'out-of-range'; 'not-possible' with reason 'not-enough-water'
 * Source: mass balance; only water evaporates.
 * @example 200 g rye, 500 g water, 655 g after; 2000 g flour in all at 75 %: 45 g gone, 1045 g water to add
 */
export function scald(q: {
  flourMassG: number
  doughHydrationPct: number
  scaldFlourG: number
  scaldWaterG: number
  scaldWeighedG: number
}): Scald {
  mustBeWithin('flourMassG', q.flourMassG, { over: 0 })
  mustBeHydration('doughHydrationPct', q.doughHydrationPct)
  mustBeWithin('scaldFlourG', q.scaldFlourG, { over: 0, max: q.flourMassG })
  mustBeWithin('scaldWaterG', q.scaldWaterG, { over: 0 })
  mustBeWithin('scaldWeighedG', q.scaldWeighedG, { min: q.scaldFlourG, max: q.scaldFlourG + q.scaldWaterG })
  const waterInScaldG = q.scaldWeighedG - q.scaldFlourG
  const evaporatedG = q.scaldWaterG - waterInScaldG
  const doughWaterG = (q.flourMassG * q.doughHydrationPct) / 100 - waterInScaldG
  if (doughWaterG < 0) throw new CalcError('not-possible', { field: 'scaldWaterG', value: q.scaldWaterG, reason: 'not-enough-water' })
  return {
    evaporatedG,
    scaldMassG: q.scaldWeighedG,
    waterInScaldG,
    doughFlourG: q.flourMassG - q.scaldFlourG,
    doughWaterG,
    tooDryPctFlour: (100 * evaporatedG) / q.flourMassG,
    cautions: ['boiling-water-burns'],
  }
}
