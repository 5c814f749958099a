import { mustBeWithin } from '../checks'

export type GlutenToProtein = {
  /** Gluten in place of some of the flour: together as much as the flour was. */
  replacingGlutenG: number
  replacingFlourG: number
  /** Gluten on top of all the flour. */
  onTopGlutenG: number
  cautions: ('takes-more-water' | 'gluten-is-wheat')[]
}

/**
 * Vital gluten that brings a flour to a protein, in place of flour or on top of it; figures as they are.
 * @param flourMassG g, > 0; @param flourProteinPct 0 to below 100; @param glutenProteinPct above the flour's, to 100
 * @param wantedProteinPct from the flour's to below the gluten's
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: mass balance.
 * @example 10.33 % to 12.5 % with gluten of 75.16 %, 1000 g: 33.5 g in place of flour, 34.6 g on top
 */
export function glutenToProtein(q: {
  flourMassG: number
  flourProteinPct: number
  glutenProteinPct: number
  wantedProteinPct: number
}): GlutenToProtein {
  mustBeWithin('flourMassG', q.flourMassG, { over: 0 })
  mustBeWithin('flourProteinPct', q.flourProteinPct, { min: 0, under: 100 })
  mustBeWithin('glutenProteinPct', q.glutenProteinPct, { over: q.flourProteinPct, max: 100 })
  mustBeWithin('wantedProteinPct', q.wantedProteinPct, { min: q.flourProteinPct, under: q.glutenProteinPct })
  const missing = q.wantedProteinPct - q.flourProteinPct
  const replacingGlutenG = (q.flourMassG * missing) / (q.glutenProteinPct - q.flourProteinPct)
  return {
    replacingGlutenG,
    replacingFlourG: q.flourMassG - replacingGlutenG,
    onTopGlutenG: (q.flourMassG * missing) / (q.glutenProteinPct - q.wantedProteinPct),
    cautions: ['takes-more-water', 'gluten-is-wheat'],
  }
}
