/** Figures of one row, g in 100 g, and where they are from. A figure that is left out is not in the source. */
export type CompositionRow = {
  /** The release's own name of the food. */
  name: string
  source: string
  water: number
  protein: number
  fat: number
  carbohydrate: number
  sugars?: number
  fibre: number
  /** Sodium × 2.5, as on labels in the EU. */
  salt: number
}

/**
 * Starting values for the invented bakery's stores.
 * Source: USDA National Nutrient Database for Standard Reference, release 28 (2015), US Department of Agriculture,
 * Agricultural Research Service. Public domain. Carbohydrate is by difference and includes fibre.
 */
export const composition = {
  breadFlourWhite: {
    name: 'Wheat bread flour, white, unenriched',
    source: 'USDA SR28 NDB 20129',
    water: 13.36, protein: 11.98, fat: 1.66, carbohydrate: 72.53, sugars: 0.31, fibre: 2.4, salt: 0.005,
  },
  allPurposeFlourWhite: {
    name: 'Wheat flour, white, all-purpose, unenriched',
    source: 'USDA SR28 NDB 20481',
    water: 11.92, protein: 10.33, fat: 0.98, carbohydrate: 76.31, sugars: 0.27, fibre: 2.7, salt: 0.005,
  },
  wholeWheatFlour: {
    name: 'Wheat flour, whole-grain',
    source: 'USDA SR28 NDB 20080',
    water: 10.74, protein: 13.21, fat: 2.5, carbohydrate: 71.97, sugars: 0.41, fibre: 10.7, salt: 0.005,
  },
  ryeFlourMedium: {
    name: 'Rye flour, medium',
    source: 'USDA SR28 NDB 20064',
    water: 10.97, protein: 10.88, fat: 1.52, carbohydrate: 75.43, sugars: 1.1, fibre: 11.8, salt: 0.005,
  },
  ryeFlourDark: {
    name: 'Rye flour, dark',
    source: 'USDA SR28 NDB 20063',
    water: 10.75, protein: 15.91, fat: 2.22, carbohydrate: 68.63, sugars: 2.31, fibre: 23.8, salt: 0.005,
  },
  wheatBran: {
    name: 'Wheat bran, crude',
    source: 'USDA SR28 NDB 20077',
    water: 9.89, protein: 15.55, fat: 4.25, carbohydrate: 64.51, sugars: 0.41, fibre: 42.8, salt: 0.005,
  },
  vitalWheatGluten: {
    name: 'Vital wheat gluten',
    source: 'USDA SR28 NDB 48052',
    water: 8.2, protein: 75.16, fat: 1.85, carbohydrate: 13.79, sugars: 0, fibre: 0.6, salt: 0.072,
  },
  barleyMaltFlour: {
    name: 'Barley malt flour',
    source: 'USDA SR28 NDB 20131',
    water: 8.21, protein: 10.28, fat: 1.84, carbohydrate: 78.3, sugars: 0.8, fibre: 7.1, salt: 0.028,
  },
  potatoFlakes: {
    name: 'Potatoes, mashed, dehydrated, flakes without milk, dry form',
    source: 'USDA SR28 NDB 11378',
    water: 6.58, protein: 8.34, fat: 0.41, carbohydrate: 81.17, sugars: 3.36, fibre: 6.6, salt: 0.193,
  },
  butterUnsalted: {
    name: 'Butter, without salt',
    source: 'USDA SR28 NDB 01145',
    water: 17.94, protein: 0.85, fat: 81.11, carbohydrate: 0.06, sugars: 0.06, fibre: 0, salt: 0.028,
  },
  oilSunflowerLinoleic: {
    name: 'Oil, sunflower, linoleic (approx. 65 %)',
    source: 'USDA SR28 NDB 04506',
    water: 0, protein: 0, fat: 100, carbohydrate: 0, sugars: 0, fibre: 0, salt: 0,
  },
  oilOlive: {
    name: 'Oil, olive',
    source: 'USDA SR28 NDB 04053',
    water: 0, protein: 0, fat: 100, carbohydrate: 0, sugars: 0, fibre: 0, salt: 0.005,
  },
  milkWhole: {
    name: 'Milk, whole, 3.25 % milkfat',
    source: 'USDA SR28 NDB 01077',
    water: 88.13, protein: 3.15, fat: 3.25, carbohydrate: 4.8, sugars: 5.05, fibre: 0, salt: 0.107,
  },
  milkPowderNonfat: {
    name: 'Milk, dry, nonfat, regular, without added vitamins',
    source: 'USDA SR28 NDB 01091',
    water: 3.16, protein: 36.16, fat: 0.77, carbohydrate: 51.98, sugars: 51.98, fibre: 0, salt: 1.337,
  },
  buttermilkLowfat: {
    name: 'Milk, buttermilk, fluid, cultured, lowfat',
    source: 'USDA SR28 NDB 01088',
    water: 90.13, protein: 3.31, fat: 0.88, carbohydrate: 4.79, sugars: 4.79, fibre: 0, salt: 0.475,
  },
  yoghurtWhole: {
    name: 'Yogurt, plain, whole milk',
    source: 'USDA SR28 NDB 01116',
    water: 87.9, protein: 3.47, fat: 3.25, carbohydrate: 4.66, sugars: 4.66, fibre: 0, salt: 0.115,
  },
  creamHeavy: {
    name: 'Cream, fluid, heavy whipping',
    source: 'USDA SR28 NDB 01053',
    water: 57.81, protein: 2.84, fat: 36.08, carbohydrate: 2.74, sugars: 2.92, fibre: 0, salt: 0.068,
  },
  sugarGranulated: {
    name: 'Sugars, granulated',
    source: 'USDA SR28 NDB 19335',
    water: 0.02, protein: 0, fat: 0, carbohydrate: 99.98, sugars: 99.8, fibre: 0, salt: 0.003,
  },
  honey: {
    name: 'Honey',
    source: 'USDA SR28 NDB 19296',
    water: 17.1, protein: 0.3, fat: 0, carbohydrate: 82.4, sugars: 82.12, fibre: 0.2, salt: 0.01,
  },
  maltSyrup: {
    name: 'Syrups, malt',
    source: 'USDA SR28 NDB 19352',
    water: 21.1, protein: 6.2, fat: 0, carbohydrate: 71.3, sugars: 71.3, fibre: 0, salt: 0.087,
  },
  yeastFresh: {
    name: 'Leavening agents, yeast, baker’s, compressed',
    source: 'USDA SR28 NDB 18374',
    water: 69, protein: 8.4, fat: 1.9, carbohydrate: 18.1, sugars: 0, fibre: 8.1, salt: 0.075,
  },
  yeastActiveDry: {
    name: 'Leavening agents, yeast, baker’s, active dry',
    source: 'USDA SR28 NDB 18375',
    water: 5.08, protein: 40.44, fat: 7.61, carbohydrate: 41.22, sugars: 0, fibre: 26.9, salt: 0.128,
  },
  saltTable: {
    name: 'Salt, table',
    source: 'USDA SR28 NDB 02047',
    water: 0.2, protein: 0, fat: 0, carbohydrate: 0, sugars: 0, fibre: 0, salt: 96.895,
  },
  waterTap: {
    name: 'Water, tap, drinking',
    source: 'USDA SR28 NDB 14411',
    water: 99.9, protein: 0, fat: 0, carbohydrate: 0, sugars: 0, fibre: 0, salt: 0.01,
  },
  sunflowerSeed: {
    name: 'Seeds, sunflower kernels, dried',
    source: 'USDA SR28 NDB 12036',
    water: 4.73, protein: 20.78, fat: 51.46, carbohydrate: 20, sugars: 2.62, fibre: 8.6, salt: 0.022,
  },
  flaxseed: {
    name: 'Seeds, flaxseed',
    source: 'USDA SR28 NDB 12220',
    water: 6.96, protein: 18.29, fat: 42.16, carbohydrate: 28.88, sugars: 1.55, fibre: 27.3, salt: 0.075,
  },
  raisins: {
    name: 'Raisins, seedless',
    source: 'USDA SR28 NDB 09298',
    water: 15.43, protein: 3.07, fat: 0.46, carbohydrate: 79.18, sugars: 59.19, fibre: 3.7, salt: 0.028,
  },
} as const satisfies Record<string, CompositionRow>
