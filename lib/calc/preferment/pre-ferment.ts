import { mustBeWithin } from '../checks'
import { CalcError } from '../error'
import { mustBeHydration } from './must-be-hydration'

export type PreFerment = {
  preFermentFlourG: number
  preFermentWaterG: number
  preFermentMassG: number
  doughFlourG: number
  doughWaterG: number
}

/**
 * Takes a part of a dough's flour, with its water, into a pre-ferment; the dough as a whole stays as it was.
 * @param flourMassG all flour, g, > 0; @param doughHydrationPct all water on all flour, %, 0 to 1000
 * @param preFermentedPct flour of the pre-ferment, % of all flour, over 0 to 100
 * @param preFermentHydrationPct its water on its own flour, %, 0 to 1000
 * @returns masses of the pre-ferment, and what is left to weigh at the dough, g
 * @throws CalcError 'not-finite' | 'out-of-range'; 'not-possible' with reason 'not-enough-water'
 * Source: mass balance.
 * @example 5000 g flour at 68 %, 15 % of it in a poolish of 100 %: 750 + 750, then 4250 and 2650
 */
export function preFerment(q: {
  flourMassG: number
  doughHydrationPct: number
  preFermentedPct: number
  preFermentHydrationPct: number
}): PreFerment {
  mustBeWithin('flourMassG', q.flourMassG, { over: 0 })
  mustBeHydration('doughHydrationPct', q.doughHydrationPct)
  mustBeWithin('preFermentedPct', q.preFermentedPct, { over: 0, max: 100 })
  mustBeHydration('preFermentHydrationPct', q.preFermentHydrationPct)
  const preFermentFlourG = (q.flourMassG * q.preFermentedPct) / 100
  const preFermentWaterG = (preFermentFlourG * q.preFermentHydrationPct) / 100
  const doughWaterG = (q.flourMassG * q.doughHydrationPct) / 100 - preFermentWaterG
  if (doughWaterG < -1e-9 * q.flourMassG) {
    throw new CalcError('not-possible', {
      field: 'preFermentHydrationPct',
      value: q.preFermentHydrationPct,
      reason: 'not-enough-water',
    })
  }
  return {
    preFermentFlourG,
    preFermentWaterG,
    preFermentMassG: preFermentFlourG + preFermentWaterG,
    doughFlourG: q.flourMassG - preFermentFlourG,
    doughWaterG: Math.max(0, doughWaterG),
  }
}
