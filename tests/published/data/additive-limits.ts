import type { DoseLimit } from '@/lib/calc/dosing/types'

const base = { isPermitted: true, countsFlourContent: false, toleranceShare: 0, checkedOn: null } as const

/** A limit in mg per kg of flour on one substance, in the form that is weighed. */
function onFlour(substance: string, jurisdiction: string, maxMgPerKg: number, source: string): DoseLimit {
  return {
    ...base,
    id: `${substance} ${jurisdiction}`,
    jurisdiction,
    food: 'flour or bread',
    basis: 'flour',
    form: substance,
    substances: [substance],
    maxMgPerKg,
    source,
  }
}

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
  /** 21 CFR 137.105 and 136.110 give parts per 100 of flour; 0.75 % is 7500 mg/kg. */
  maltedBarleyUs: onFlour('malted barley flour', 'US', 7500, '21 CFR 137.105'),
  soyFlourUs: onFlour('enzyme-active soy flour', 'US', 5000, '21 CFR 136.110'),
  monocalciumPhosphateUs: onFlour('monocalcium phosphate', 'US', 7500, '21 CFR 136.110'),
  calciumStearoylLactylateUs: onFlour('calcium stearoyl lactylate', 'US', 5000, '21 CFR 172.844'),
  sodiumStearylFumarateUs: onFlour('sodium stearyl fumarate', 'US', 5000, '21 CFR 172.826'),
  potassiumBromateUs: onFlour('potassium bromate', 'US', 50, '21 CFR 137.155, bromated flour'),
  azodicarbonamideCanada: onFlour('azodicarbonamide', 'CA', 45, 'Health Canada, list 2, 2024'),
  cysteineCanada: onFlour('L-cysteine hydrochloride', 'CA', 90, 'Health Canada, list 2, 2024'),
  calciumStearoylLactylateCanada: onFlour('calcium stearoyl lactylate', 'CA', 3750, 'Health Canada, list 2, 2024'),
  calciumPeroxideCanada: onFlour('calcium peroxide', 'CA', 100, 'Health Canada, list 2, 2024'),
  calciumIodateCanada: onFlour('calcium iodate', 'CA', 45, 'Health Canada, list 2, 2024'),
} as const satisfies Record<string, DoseLimit>
