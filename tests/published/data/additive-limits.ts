import type { DoseLimit } from '@/lib/calc/dosing/types'

const base = { isPermitted: true, countsFlourContent: false, toleranceShare: 0, checkedOn: null } as const

/**
 * Legal limits used in checks, each with where it was read. None has been compared with the text in force today:
 * `checkedOn` is null. Figures marked 'from memory' were not looked up.
 */
export const ADDITIVE_LIMITS = {
  /** The regulation prints 2.05 g in 100 lb as 45 ppm; the pair differs by 0.43 %, so the tolerance is 0.5 %. */
  azodicarbonamideUs: {
    ...base,
    id: 'azodicarbonamide-us',
    jurisdiction: 'US',
    food: 'flour',
    basis: 'flour',
    form: 'azodicarbonamide',
    substances: ['azodicarbonamide'],
    maxMgPerKg: 45,
    countsFlourContent: true,
    toleranceShare: 0.005,
    source: '21 CFR 172.806',
  },
  azodicarbonamideEu: {
    ...base,
    id: 'azodicarbonamide-eu',
    jurisdiction: 'EU',
    food: 'bread',
    basis: 'flour',
    form: 'azodicarbonamide',
    substances: ['azodicarbonamide'],
    isPermitted: false,
    maxMgPerKg: null,
    source: 'not permitted in the EU (from memory)',
  },
  ascorbicAcidCanada: {
    ...base,
    id: 'ascorbic-acid-ca',
    jurisdiction: 'CA',
    food: 'bread, flour, unstandardised',
    basis: 'flour',
    form: 'ascorbic acid',
    substances: ['ascorbic acid'],
    maxMgPerKg: 200,
    source: 'Health Canada, list 2',
  },
  ascorbicAcidEu: {
    ...base,
    id: 'ascorbic-acid-eu',
    jurisdiction: 'EU',
    food: 'flour 06.2.1',
    basis: 'flour',
    form: 'ascorbic acid',
    substances: ['ascorbic acid'],
    maxMgPerKg: null,
    source: 'Regulation (EC) 1333/2008, Annex II, 06.2.1',
  },
  cysteineUs: {
    ...base,
    id: 'cysteine-us',
    jurisdiction: 'US',
    food: 'dough of yeast-leavened baked goods',
    basis: 'flour',
    form: 'L-cysteine',
    substances: ['L-cysteine'],
    maxMgPerKg: 90,
    source: '21 CFR 184.1271, 184.1272: 0.009 part total L-cysteine per 100 parts flour',
  },
  stearoylLactylatesEu: {
    ...base,
    id: 'stearoyl-lactylates-eu',
    jurisdiction: 'EU',
    food: 'bread 07.1 other than 07.1.1 and 07.1.2',
    basis: 'finished-food',
    form: 'stearoyl lactylates',
    substances: ['stearoyl lactylates'],
    maxMgPerKg: 3000,
    source: 'Regulation (EC) 1333/2008, Annex II, 07.1',
  },
  /** Whether the level is as acid must be read in the current text; here it is taken as acid. */
  propionatesEuRye: {
    ...base,
    id: 'propionates-eu',
    jurisdiction: 'EU',
    food: 'prepacked sliced bread and rye bread',
    basis: 'finished-food',
    form: 'propionic acid',
    substances: ['propionic acid'],
    maxMgPerKg: 3000,
    source: 'Regulation (EC) 1333/2008, Annex II, 07.1',
  },
} as const satisfies Record<string, DoseLimit>
