import { mustBeWithin } from '../checks'

/** kJ and kcal in one g. Regulation (EU) No 1169/2011, Annex XIV, consolidated text of 13 March 2024. */
const FACTORS = {
  fatG: { kj: 37, kcal: 9 },
  carbohydrateG: { kj: 17, kcal: 4 },
  polyolsG: { kj: 10, kcal: 2.4 },
  fibreG: { kj: 8, kcal: 2 },
  proteinG: { kj: 17, kcal: 4 },
  alcoholG: { kj: 29, kcal: 7 },
  organicAcidsG: { kj: 13, kcal: 3 },
  salatrimsG: { kj: 25, kcal: 6 },
  erythritolG: { kj: 0, kcal: 0 },
} as const

export type EnergyParts = Record<keyof typeof FACTORS, number>

/**
 * Energy of a food from what it is made of, by the EU's conversion factors.
 * @param fatG, carbohydrateG (available, without fibre and polyols), polyolsG (but erythritol), fibreG, proteinG,
 *   alcoholG, organicAcidsG, salatrimsG, erythritolG in one amount of food, g, each ≥ 0
 * @returns kJ and kcal of that amount, not rounded, each by its own factors
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: Regulation (EU) No 1169/2011, Annex XIV.
 */
export function energy(q: EnergyParts): { energyKj: number; energyKcal: number } {
  let energyKj = 0
  let energyKcal = 0
  for (const part of Object.keys(FACTORS) as (keyof EnergyParts)[]) {
    const massG = mustBeWithin(part, q[part], { min: 0 })
    energyKj += massG * FACTORS[part].kj
    energyKcal += massG * FACTORS[part].kcal
  }
  return { energyKj: mustBeWithin('energyKj', energyKj), energyKcal }
}
