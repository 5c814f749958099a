import { mustBeWithin } from '../checks'
import { CalcError } from '../error'
import { mustBeHydration } from './must-be-hydration'

export type Levain = {
  starterG: number
  freshFlourG: number
  freshWaterG: number
  flourInAllG: number
  waterInAllG: number
  /** Starter on the flour that is added; the other is on the whole mix. They share no name. */
  starterOnFreshFlourPct: number
  starterInMixPct: number
}

/**
 * What to feed for a mass of levain. Both meanings of 'inoculation' are in use, so which one is meant is a choice, and
 * the answer gives both: starter on fresh flour, and starter as part of the whole mix.
 * @param levainMassG wanted in all, g, > 0; @param levainHydrationPct its water on its flour, %, 0 to 1000
 * @param starterHydrationPct of the ripe starter, %, 0 to 1000
 * @param starterPct over 0; at most 1000 on fresh flour, below 100 of the mix
 * @throws CalcError 'not-finite' | 'out-of-range'; 'not-possible' with reason 'starter-too-wet' | 'starter-too-dry' when
 *   the starter alone brings more water, or more flour, than the levain is to have
 * Source: definition of inoculation on fresh flour: US bread newsletter, 2023; mass balance.
 * @example 360 g at 100 %, 20 % on fresh flour, starter at 100 %: 163.64 flour, 163.64 water, 32.73 starter
 */
export function levain(q: {
  levainMassG: number
  levainHydrationPct: number
  starterHydrationPct: number
  starterBy: 'fresh-flour' | 'mix'
  starterPct: number
}): Levain {
  mustBeWithin('levainMassG', q.levainMassG, { over: 0 })
  const wet = mustBeHydration('levainHydrationPct', q.levainHydrationPct) / 100
  const starterWet = mustBeHydration('starterHydrationPct', q.starterHydrationPct) / 100
  const part =
    mustBeWithin('starterPct', q.starterPct, q.starterBy === 'mix' ? { over: 0, under: 100 } : { over: 0, max: 1000 }) /
    100
  const flourInAllG = q.levainMassG / (1 + wet)
  const waterInAllG = q.levainMassG - flourInAllG
  const starterG = q.starterBy === 'mix' ? part * q.levainMassG : (part * flourInAllG) / (1 + part / (1 + starterWet))
  const freshFlourG = flourInAllG - starterG / (1 + starterWet)
  const freshWaterG = waterInAllG - (starterG * starterWet) / (1 + starterWet)
  const least = 1e-9 * q.levainMassG
  if (freshFlourG < least)
    throw new CalcError('not-possible', { field: 'starterPct', value: q.starterPct, reason: 'starter-too-dry' })
  if (freshWaterG < -least)
    throw new CalcError('not-possible', { field: 'starterPct', value: q.starterPct, reason: 'starter-too-wet' })
  return {
    starterG,
    freshFlourG,
    freshWaterG: Math.max(0, freshWaterG),
    flourInAllG,
    waterInAllG,
    starterOnFreshFlourPct: (100 * starterG) / freshFlourG,
    starterInMixPct: (100 * starterG) / q.levainMassG,
  }
}
